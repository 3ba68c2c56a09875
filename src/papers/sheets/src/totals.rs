//! The sheet of totals.

use papers::log::{Total, Totals};
use rust_xlsxwriter::{Format, FormatBorder, Worksheet, XlsxError};

pub(crate) fn write(sheet: &mut Worksheet, totals: &Totals) -> Result<(), XlsxError> {
    sheet.set_name("totals")?;
    sheet.set_column_width(0, 34)?;
    let mut at = At { sheet, row: 0 };
    at.line("visits", totals.visits.into())?;
    at.line("pairs ordered", totals.pairs.into())?;
    if let Some(minutes) = totals.minutes_a_visit() {
        at.line("minutes a visit", (minutes * 10.0).round() / 10.0)?;
    }
    at.part("by place", &totals.places)?;
    at.part("by clinician", &totals.clinicians)?;
    at.part("by outcome", &totals.outcomes)?;
    at.part("referrals by urgency", &totals.referrals)
}

/// Where the next line goes.
struct At<'a> {
    sheet: &'a mut Worksheet,
    row: u32,
}

impl At<'_> {
    fn line(&mut self, name: &str, number: f64) -> Result<(), XlsxError> {
        self.sheet.write_string(self.row, 0, name)?;
        self.sheet.write_number(self.row, 1, number)?;
        self.row += 1;
        Ok(())
    }

    fn part(&mut self, title: &str, totals: &[Total]) -> Result<(), XlsxError> {
        let heading = Format::new()
            .set_bold()
            .set_border_bottom(FormatBorder::Thin);
        self.row += 1;
        self.sheet
            .write_string_with_format(self.row, 0, title, &heading)?;
        self.sheet
            .write_string_with_format(self.row, 1, "visits", &heading)?;
        self.row += 1;
        for total in totals {
            self.line(&total.name, total.count.into())?;
        }
        Ok(())
    }
}
