//! The prescription as a printer gets it.

use anyhow::{Context, Result, ensure};
use lightround_tests::Hand;
use lopdf::Document;

/// A size of paper: its button, its width and height in centimetres. ISO 216.
const PAPERS: [(&str, [f64; 2]); 2] = [("a5", [14.8, 21.0]), ("a4", [21.0, 29.7])];

/// Prints the prescription that is open on both sizes of paper: one page, every line on it, none of the screen's
/// buttons, and the same by Night as by Day.
pub async fn on_both_papers(hand: &Hand, lines: &[&str]) -> Result<()> {
    for (paper, [width, height]) in PAPERS {
        hand.click(&format!("#paper-size-{paper}")).await?;
        hand.see(&format!("#paper-size-{paper}[aria-checked=true]"))
            .await?;
        let mut prints = Vec::new();
        for palette in ["night", "day"] {
            hand.ask(&format!(
                "document.documentElement.dataset.palette = '{palette}'"
            ))
            .await?;
            let name = format!("prescription-{paper}-{palette}");
            let pdf = hand.print(&name, width, height).await?;
            let print = one_page(&pdf, lines);
            prints.push(print.with_context(|| format!("printed on {paper} by {palette}"))?);
        }
        ensure!(
            prints[0] == prints[1],
            "on {paper}, Night prints otherwise than Day"
        );
    }
    Ok(())
}

/// Looks at what was printed, and gives all that is drawn on it.
fn one_page(pdf: &[u8], lines: &[&str]) -> Result<Vec<u8>> {
    let document = Document::load_mem(pdf)?;
    let pages = document.get_pages();
    ensure!(pages.len() == 1, "it takes {} pages", pages.len());
    let text = document.extract_text(&[1])?;
    for line in lines {
        ensure!(text.contains(line), "“{line}” is not on it:\n{text}");
    }
    for button in ["Print", "Lock", "Night", "Day", "A4"] {
        let alone = text.lines().any(|line| line.trim() == button);
        ensure!(!alone, "the button “{button}” is on it:\n{text}");
    }
    let page = pages.values().next().context("a page is there")?;
    Ok(document.get_page_content(*page))
}
