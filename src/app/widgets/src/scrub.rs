//! Dragging a number: how far a finger has gone, in steps.

/// Less than this is a tap, in CSS pixels.
pub const SLOP: f64 = 8.0;
/// One step of travel, in CSS pixels: about two millimetres, the least that a thumb does on purpose.
pub const PER_STEP: f64 = 14.0;

#[derive(Clone, Copy, Debug, PartialEq)]
enum Along {
    Undecided,
    Across,
    Upright,
}

/// One drag, from press to release. It keeps to the direction in which it left the slop.
#[derive(Clone, Copy, Debug)]
pub struct Drag {
    from: (f64, f64),
    along: Along,
}

impl Drag {
    /// A finger put down at a point of the screen.
    pub fn at(x: f64, y: f64) -> Self {
        Self {
            from: (x, y),
            along: Along::Undecided,
        }
    }

    /// The finger moved to a point: the steps from where it began (right and up count as more), or none while it may
    /// still be a tap.
    pub fn moved(&mut self, x: f64, y: f64) -> Option<i32> {
        let (right, up) = (x - self.from.0, self.from.1 - y);
        if self.along == Along::Undecided {
            if right.hypot(up) <= SLOP {
                return None;
            }
            self.along = if right.abs() >= up.abs() {
                Along::Across
            } else {
                Along::Upright
            };
        }
        let travel = if self.along == Along::Across {
            right
        } else {
            up
        };
        let beyond = (travel.abs() - SLOP).max(0.0);
        Some((beyond / PER_STEP).floor() as i32 * travel.signum() as i32)
    }

    /// Whether the finger has gone far enough to be no tap.
    pub fn began(&self) -> bool {
        self.along != Along::Undecided
    }
}

#[cfg(test)]
mod tests {
    use super::Drag;

    #[test]
    fn a_trembling_tap_is_a_tap() {
        let mut drag = Drag::at(100.0, 100.0);
        assert_eq!(drag.moved(104.0, 97.0), None);
        assert!(!drag.began());
    }

    #[test]
    fn up_and_right_are_more() {
        assert_eq!(Drag::at(0.0, 0.0).moved(0.0, -50.0), Some(3));
        assert_eq!(Drag::at(0.0, 0.0).moved(50.0, 0.0), Some(3));
        assert_eq!(Drag::at(0.0, 0.0).moved(0.0, 50.0), Some(-3));
        assert_eq!(Drag::at(0.0, 0.0).moved(-50.0, 0.0), Some(-3));
    }

    #[test]
    fn a_drag_keeps_its_direction_and_comes_back() {
        let mut drag = Drag::at(0.0, 0.0);
        assert_eq!(drag.moved(0.0, -22.0), Some(1));
        assert_eq!(drag.moved(80.0, -22.0), Some(1));
        assert_eq!(drag.moved(0.0, -4.0), Some(0));
        assert_eq!(drag.moved(0.0, 22.0), Some(-1));
    }
}
