//! Comparing a pair with its order.

use super::reckoning::{Hundredths, axis_off, off, thousandths};
use super::standard::{Band, Imbalance, Standard, band, row};
use super::{Finished, Measured, Ordered, ReadTo, Report, Unjudged, Verdict, What, Why};
use crate::prism::relative;
use crate::{Eye, SphereCyl};

impl Standard {
    /// Compares a pair with its order. The form in which either was written does not matter.
    pub fn judge(&self, ordered: &Ordered, measured: &Measured) -> Report {
        let mut judging = Judging {
            standard: self,
            read_to: measured.read_to,
            report: Report {
                standard: self.name,
                verdicts: Vec::new(),
                unjudged: Vec::new(),
            },
        };
        for eye in Eye::BOTH {
            judging.lens(eye, ordered.0.of(eye), measured.lenses.of(eye));
        }
        judging.pair(ordered, measured);
        judging.report
    }
}

/// A comparison under way.
struct Judging<'a> {
    standard: &'a Standard,
    read_to: ReadTo,
    report: Report,
}

impl Judging<'_> {
    fn lens(&mut self, eye: Eye, ordered: &Finished, measured: &Finished) {
        // One sign form: in minus form the sphere is the most plus principal power.
        let order = ordered.power().minus_form();
        let found = measured.power().minus_form();
        self.power(eye, &order, &found);
        self.axis(eye, &order, &found);
        let additions = (ordered.add(), measured.add());
        let size = ordered.add().map_or(0, thousandths);
        let limit = band(self.standard.addition, size).copied();
        self.optional(What::Addition(eye), additions, limit, self.read_to.power());
        let heights = (ordered.segment_mm(), measured.segment_mm());
        let limit = self.standard.segment;
        self.optional(What::Segment(eye), heights, limit, ReadTo::HEIGHT);
    }

    fn power(&mut self, eye: Eye, order: &SphereCyl, found: &SphereCyl) {
        let strongest = thousandths(order.strongest());
        let limits = row(self.standard.power, |row| row.up_to, strongest);
        let step = self.read_to.power();
        for (ordered, measured) in order.principal().into_iter().zip(found.principal()) {
            let limit = limits.map(|row| (row.meridian.limit(strongest), row.basis));
            let what = What::Power(eye, ordered.meridian);
            self.compare(what, (ordered.power, measured.power), limit, step);
            if order.cylinder.is_none() && found.cylinder.is_none() {
                // Two spheres have one power.
                break;
            }
        }
        let cylinders = (order.cylinder_power(), found.cylinder_power());
        if cylinders == (0.0, 0.0) {
            return;
        }
        let size = thousandths(cylinders.0);
        let limit = limits.and_then(|row| band(row.cylinder, size));
        let limit = limit.map(|band| (band.allowed.limit(size), band.basis));
        self.compare(What::Cylinder(eye), cylinders, limit, step);
    }

    fn axis(&mut self, eye: Eye, order: &SphereCyl, found: &SphereCyl) {
        let what = What::Axis(eye);
        let Some(ordered) = order.cylinder else {
            return;
        };
        let size = thousandths(ordered.power());
        if size.abs() < thousandths(self.standard.axis_from) {
            return self.leave(what, Why::NoLimit);
        }
        let Some(measured) = found.cylinder else {
            return self.leave(what, Why::NotMeasured);
        };
        let axes = (ordered.axis().degrees(), measured.axis().degrees());
        match band(self.standard.axis, size) {
            Some(band) => {
                let limit = (band.allowed.limit(size), band.basis);
                let off = axis_off(axes.0, axes.1);
                let verdict = Verdict::new(what, axes, off, limit, ReadTo::AXIS);
                self.report.verdicts.push(verdict);
            }
            None => self.leave(what, Why::NoLimit),
        }
    }

    fn pair(&mut self, ordered: &Ordered, measured: &Measured) {
        let order = relative(ordered.0.right.prism(), ordered.0.left.prism());
        let lenses = &measured.lenses;
        let found = relative(lenses.right.prism(), lenses.left.prism());
        let prisms = (order.h(), found.h());
        let limit = self.imbalance(ordered, 180.0, order.h(), |row| row.horizontal);
        self.compare(What::HorizontalPrism, prisms, limit, self.read_to.prism());
        let prisms = (order.v(), found.v());
        let limit = self.imbalance(ordered, 90.0, order.v(), |row| row.vertical);
        self.compare(What::VerticalPrism, prisms, limit, self.read_to.prism());
    }

    /// The limit along a direction, by the stronger lens's power there and the prism prescribed there.
    fn imbalance(
        &self,
        ordered: &Ordered,
        degrees: f64,
        prescribed: f64,
        direction: impl Fn(&super::PrismRow) -> Imbalance,
    ) -> Option<(Hundredths, super::Basis)> {
        let along = |lens: &Finished| lens.power().power_along(degrees).abs();
        let stronger = along(&ordered.0.right).max(along(&ordered.0.left));
        let limits = row(
            self.standard.prism,
            |row| row.up_to,
            thousandths(prescribed),
        )?;
        let imbalance = direction(limits);
        Some((imbalance.limit(thousandths(stronger)), imbalance.basis))
    }

    /// What need not be there on either side.
    fn optional(
        &mut self,
        what: What,
        values: (Option<f64>, Option<f64>),
        limit: Option<Band>,
        step: i64,
    ) {
        match values {
            (None, None) => {}
            (Some(_), None) => self.leave(what, Why::NotMeasured),
            (None, Some(_)) => self.leave(what, Why::NotOrdered),
            (Some(ordered), Some(measured)) => {
                let limit =
                    limit.map(|band| (band.allowed.limit(thousandths(ordered)), band.basis));
                self.compare(what, (ordered, measured), limit, step);
            }
        }
    }

    fn compare(
        &mut self,
        what: What,
        values: (f64, f64),
        limit: Option<(Hundredths, super::Basis)>,
        step: i64,
    ) {
        match limit {
            Some(limit) => {
                let off = off(values.0, values.1);
                let verdict = Verdict::new(what, values, off, limit, step);
                self.report.verdicts.push(verdict);
            }
            None => self.leave(what, Why::NoLimit),
        }
    }

    fn leave(&mut self, what: What, why: Why) {
        self.report.unjudged.push(Unjudged { what, why });
    }
}
