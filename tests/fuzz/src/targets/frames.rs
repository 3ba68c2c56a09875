//! Frames, and the statements of a roll.

use crate::seeds::frozen;
use vault::sample::devices;
use vault::{Frame, Roll, Statement};

pub fn seeds() -> Vec<Vec<u8>> {
    frozen(&["src/vault/golden/frame", "src/vault/golden/erasure"])
}

/// A frame has one way of being written, and emptied it is still the one that was signed.
pub fn frame(bytes: &[u8]) {
    let Ok(frame) = Frame::parse(bytes.to_vec()) else {
        return;
    };
    assert_eq!(frame.bytes(), bytes);
    let emptied = frame.emptied();
    assert_eq!(emptied.hash(), frame.hash());
    assert_eq!(
        Frame::parse(emptied.bytes().to_vec()).as_ref(),
        Ok(&emptied)
    );
    let device = devices(1, 1).remove(0);
    assert!(
        frame.verify(&device.keys.public()).is_err(),
        "nobody can sign by chance"
    );
}

pub fn statements() -> Vec<Vec<u8>> {
    frozen(&["src/vault/golden/roll"])
}

/// A statement has one way of being written.
pub fn statement(bytes: &[u8]) {
    if let Ok(statement) = Statement::parse(bytes) {
        assert_eq!(statement.bytes(), bytes);
    }
}

pub fn rolls() -> Vec<Vec<u8>> {
    let mut rolls = statements();
    rolls.push(rolls.concat());
    rolls
}

/// Whatever statements follow one another: a roll that is read with its signatures is also read without, as the same.
pub fn roll(bytes: &[u8]) {
    let pieces = bytes.chunks(Statement::LENGTH);
    let statements: Vec<Statement> = pieces
        .map_while(|piece| Statement::parse(piece).ok())
        .collect();
    let Some(first) = statements.first() else {
        return;
    };
    let reread = Roll::reread(first.vault, &statements);
    if let Ok(read) = Roll::read(first.vault, &statements) {
        assert_eq!(reread, Ok(read));
    }
}
