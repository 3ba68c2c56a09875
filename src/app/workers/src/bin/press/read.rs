//! A FHIR file, read.

use workers::{Earlier, Made, Taken};

pub fn read(text: &str) -> Result<Made, String> {
    let imported = fhir::import(text).map_err(|error| error.to_string())?;
    Ok(Made::Taken(Taken {
        earlier: imported.earlier.iter().map(earlier).collect(),
        report: imported.report,
        left_over: said(&imported.left_over),
    }))
}

fn earlier(found: &fhir::Earlier) -> Earlier {
    Earlier {
        person: found.person.clone(),
        born: found.born,
        on: found.on,
        sections: found.sections(),
        left_over: [said(&found.left_over), said(&found.found)].concat(),
    }
}

fn said(left_over: &[fhir::LeftOver]) -> Vec<String> {
    left_over.iter().map(ToString::to_string).collect()
}
