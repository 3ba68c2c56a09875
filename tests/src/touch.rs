//! A finger: WebDriver pointer actions of the touch kind, which `thirtyfour`'s own chain doesn't offer.

use http::Method;
use serde_json::{Value, json};
use std::sync::Arc;
use thirtyfour::WebElement;
use thirtyfour::common::command::ExtensionCommand;
use thirtyfour::error::WebDriverResult;

/// One gesture of one finger, as the WebDriver standard's "perform actions" takes it.
#[derive(Debug)]
pub struct Touch {
    steps: Vec<Value>,
}

impl Touch {
    /// The finger comes down at an offset from the element's centre, in CSS pixels.
    ///
    /// # Errors
    /// Where the element can't be named to the browser.
    pub fn down(on: &WebElement, x: i32, y: i32) -> WebDriverResult<Self> {
        let steps = vec![
            json!({ "type": "pointerMove", "duration": 0, "origin": on.to_json()?, "x": x, "y": y }),
            json!({ "type": "pointerDown", "button": 0 }),
        ];
        Ok(Self { steps })
    }

    /// It slides on by this much, in as many small moves as a real finger would make.
    pub fn slide(mut self, x: i32, y: i32) -> Self {
        const MOVES: i32 = 8;
        for part in 0..MOVES {
            let piece = |whole: i32| whole * (part + 1) / MOVES - whole * part / MOVES;
            self.steps.push(json!({ "type": "pointerMove", "duration": 16, "origin": "pointer", "x": piece(x), "y": piece(y) }));
        }
        self
    }

    /// It rests for a while.
    pub fn hold(mut self, milliseconds: u32) -> Self {
        self.steps
            .push(json!({ "type": "pause", "duration": milliseconds }));
        self
    }

    /// It lifts.
    pub fn up(mut self) -> Self {
        self.steps.push(json!({ "type": "pointerUp", "button": 0 }));
        self
    }
}

impl ExtensionCommand for Touch {
    fn parameters_json(&self) -> Option<Value> {
        Some(json!({ "actions": [{
            "type": "pointer", "id": "finger", "parameters": { "pointerType": "touch" }, "actions": self.steps,
        }]}))
    }

    fn method(&self) -> Method {
        Method::POST
    }

    fn endpoint(&self) -> Arc<str> {
        "/actions".into()
    }
}
