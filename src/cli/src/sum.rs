//! `lightround sum`: the sums of the back of an envelope, listed, asked and answered.

use crate::lines;
use anyhow::{Context, Result, ensure};
use optics::sums::{self, Sum};
use std::fmt::Write;

/// Answers the words after `sum`.
pub fn answer(words: &[String]) -> Result<String> {
    let Some((slug, texts)) = words.split_first() else {
        return list();
    };
    let sum = sums::named(slug)
        .with_context(|| format!("there is no “{slug}”: `lightround sum` lists them"))?;
    if texts.is_empty() {
        return what_it_asks(sum);
    }
    let placed = placed(sum, texts)?;
    lines::page(&sum.answer(&placed)?)
}

fn list() -> Result<String> {
    let width = sums::each().map(|sum| sum.slug.len()).max();
    let width = width.unwrap_or_default();
    let mut page = String::new();
    for group in sums::ALL {
        writeln!(page, "{}", group.name())?;
        for sum in group.sums {
            writeln!(page, "  {:width$}  {}", sum.slug, sum.name())?;
        }
    }
    Ok(page)
}

fn what_it_asks(sum: &Sum) -> Result<String> {
    let width = sum.asks.iter().map(|ask| ask.slug.len()).max();
    let width = width.unwrap_or_default();
    let mut page = format!("{}\n{}\n\n", sum.name(), sum.about());
    for ask in sum.asks {
        let (slug, name, example) = (ask.slug, ask.name(), ask.example());
        let left_out = ask.left_out().map(|means| format!("; left out, {means}"));
        let left_out = left_out.unwrap_or_default();
        writeln!(page, "  {slug:width$}  {name}, like {example}{left_out}")?;
    }
    Ok(page)
}

/// The texts in the order of the asks: `slug=text` goes where it says, any other into the next free place.
fn placed(sum: &Sum, texts: &[String]) -> Result<Vec<String>> {
    let named = |text: &str| {
        let (slug, value) = text.split_once('=')?;
        let place = sum.asks.iter().position(|ask| ask.slug == slug)?;
        Some((place, value.to_owned()))
    };
    let mut places: Vec<Option<String>> = vec![None; sum.asks.len()];
    let mut bare = Vec::new();
    for text in texts {
        match named(text) {
            Some((place, value)) => {
                let earlier = places[place].replace(value);
                ensure!(earlier.is_none(), "{} is given twice", sum.asks[place].slug);
            }
            None => bare.push(text.clone()),
        }
    }
    let free = places.iter_mut().filter(|place| place.is_none());
    let mut bare = bare.into_iter();
    for (place, text) in free.zip(bare.by_ref()) {
        *place = Some(text);
    }
    if let Some(text) = bare.next() {
        let most = sum.asks.len();
        anyhow::bail!("“{text}” is one answer too many: this sum takes {most}");
    }
    Ok(places.into_iter().map(Option::unwrap_or_default).collect())
}
