//! A run: consecutive frames of one device, the unit in which frames travel.

use vault::{DeviceId, Frame, Head, VaultId};

/// The most frames in a run.
pub const MOST_FRAMES: usize = 500;
/// The most bytes of frames in a run, and in a page of runs.
pub const MOST_BYTES: usize = 1024 * 1024;

/// Frames of one device's log, at least one, each naming the one before it, within [`MOST_FRAMES`] and [`MOST_BYTES`].
///
/// Whether they are genuine is not looked at here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run(Vec<Frame>);

/// Why frames are no run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RunError {
    /// There are none.
    #[error("a run of entries is empty")]
    Empty,
    /// More than [`MOST_FRAMES`].
    #[error("a run has {0} entries, and the most is {MOST_FRAMES}")]
    TooMany(usize),
    /// More than [`MOST_BYTES`].
    #[error("a run has {0} bytes, and the most is {MOST_BYTES}")]
    TooBig(usize),
    /// A frame that doesn't follow the one before it.
    #[error("entry {sequence} of a run doesn't follow the one before it")]
    Broken {
        /// Its number.
        sequence: u64,
    },
}

impl Run {
    /// Takes frames as a run.
    ///
    /// # Errors
    ///
    /// None, too many, or one that doesn't follow the one before it.
    pub fn new(frames: Vec<Frame>) -> Result<Self, RunError> {
        if frames.is_empty() {
            return Err(RunError::Empty);
        }
        if frames.len() > MOST_FRAMES {
            return Err(RunError::TooMany(frames.len()));
        }
        let bytes = frames.iter().map(|frame| frame.bytes().len()).sum();
        if bytes > MOST_BYTES {
            return Err(RunError::TooBig(bytes));
        }
        match frames.windows(2).find(|pair| !follows(&pair[0], &pair[1])) {
            Some(pair) => Err(RunError::Broken {
                sequence: pair[1].sequence(),
            }),
            None => Ok(Self(frames)),
        }
    }

    /// The longest run that `frames` begin with; none where there are no frames.
    pub fn beginning(frames: Vec<Frame>) -> Option<Self> {
        let mut bytes = 0;
        let mut run: Vec<Frame> = Vec::new();
        for frame in frames {
            bytes += frame.bytes().len();
            let fits = run.len() < MOST_FRAMES && bytes <= MOST_BYTES;
            if !fits || run.last().is_some_and(|last| !follows(last, &frame)) {
                break;
            }
            run.push(frame);
        }
        (!run.is_empty()).then_some(Self(run))
    }

    /// The frames.
    pub fn frames(&self) -> &[Frame] {
        &self.0
    }

    /// The vault that they are of.
    pub fn vault(&self) -> VaultId {
        self.first().header().vault
    }

    /// The device that they are of.
    pub fn device(&self) -> DeviceId {
        self.first().device()
    }

    /// The head that they continue; none where the first frame is the log's first.
    pub fn before(&self) -> Option<Head> {
        let header = self.first().header();
        (header.sequence > 1).then(|| Head {
            sequence: header.sequence - 1,
            hash: header.previous,
        })
    }

    /// The head of a log that ends with them.
    pub fn head(&self) -> Head {
        self.0[self.0.len() - 1].head()
    }

    /// Bytes of all frames.
    pub fn bytes(&self) -> usize {
        self.0.iter().map(|frame| frame.bytes().len()).sum()
    }

    /// What is left without the frames up to number `sequence`; none where nothing is.
    pub fn after(&self, sequence: u64) -> Option<Self> {
        self.part(|number| number > sequence)
    }

    /// What is left without the frames after number `sequence`; none where nothing is.
    pub fn through(&self, sequence: u64) -> Option<Self> {
        self.part(|number| number <= sequence)
    }

    /// The same frames, and of those that are gone only what stays of them.
    #[must_use]
    pub fn emptied(&self, gone: impl Fn(&Frame) -> bool) -> Self {
        let left = |frame: &Frame| {
            if gone(frame) {
                frame.emptied()
            } else {
                frame.clone()
            }
        };
        Self(self.0.iter().map(left).collect())
    }

    fn part(&self, wanted: impl Fn(u64) -> bool) -> Option<Self> {
        let frames: Vec<Frame> = self
            .0
            .iter()
            .filter(|frame| wanted(frame.sequence()))
            .cloned()
            .collect();
        (!frames.is_empty()).then_some(Self(frames))
    }

    /// A run has at least one frame.
    pub fn first(&self) -> &Frame {
        &self.0[0]
    }
}

fn follows(one: &Frame, next: &Frame) -> bool {
    one.header().vault == next.header().vault
        && one.device() == next.device()
        && one.sequence().checked_add(1) == Some(next.sequence())
        && one.hash() == next.header().previous
}

#[cfg(test)]
mod tests {
    use super::*;
    use vault::sample::devices;

    #[test]
    fn a_run_is_one_devices_frames_without_gaps() {
        let mut devices = devices(1, 2);
        let (log, other) = (devices[0].log(4), devices[1].log(1));
        let run = Run::new(log[1..4].to_vec()).unwrap();
        assert_eq!(run.before(), Some(log[0].head()));
        assert_eq!(run.head(), log[3].head());
        assert_eq!(Run::new(log[..1].to_vec()).unwrap().before(), None);
        assert_eq!(Run::new(vec![]), Err(RunError::Empty));
        for wrong in [
            vec![log[0].clone(), log[2].clone()],
            vec![log[1].clone(), log[1].clone()],
            vec![log[2].clone(), log[1].clone()],
            vec![log[0].clone(), other[1].clone()],
        ] {
            let sequence = wrong[1].sequence();
            assert_eq!(Run::new(wrong), Err(RunError::Broken { sequence }));
        }
    }

    #[test]
    fn a_run_is_cut_where_it_is_asked_to_be() {
        let log = devices(1, 1)[0].log(4);
        let run = Run::new(log.clone()).unwrap();
        assert_eq!(run.after(3).unwrap().frames(), &log[3..]);
        assert_eq!(run.through(3).unwrap().frames(), &log[..3]);
        assert_eq!((run.after(5), run.through(0)), (None, None));
    }

    #[test]
    fn the_longest_beginning_stops_at_a_break_and_at_the_limits() {
        let mut device = devices(1, 1).remove(0);
        let mut log = device.log(MOST_FRAMES);
        assert_eq!(
            Run::new(log.clone()),
            Err(RunError::TooMany(MOST_FRAMES + 1))
        );
        assert_eq!(
            Run::beginning(log.clone()).unwrap().frames(),
            &log[..MOST_FRAMES]
        );
        log.remove(3);
        assert_eq!(Run::beginning(log).unwrap().frames().len(), 3);
        assert_eq!(Run::beginning(vec![]), None);

        let mut large = vec![device.begin("sample")];
        for _ in 0..3 {
            let head = large[large.len() - 1].head();
            large.push(device.write(head, &vec![0; 400_000]));
        }
        assert!(matches!(Run::new(large.clone()), Err(RunError::TooBig(_))));
        // Each of the large ones takes half a mebibyte and a little, so one goes with the introduction.
        assert_eq!(Run::beginning(large).unwrap().frames().len(), 2);
    }
}
