//! The primitives against their published vectors, so that an upgrade of a library can't change them unseen.
//!
//! Taken from the libraries' own test data: Argon2id, XChaCha20-Poly1305 (key, message and associated data), X25519.
//! From memory: Ed25519, HKDF, and the ciphertext of XChaCha20-Poly1305; a vector remembered wrongly could not pass.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

use argon2::{Algorithm, Argon2, AssociatedData, ParamsBuilder, Version};
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{KeyInit, XChaCha20Poly1305, XNonce};
use ed25519_dalek::{Signature, Signer, SigningKey};
use hkdf::Hkdf;
use sha2::Sha256;

fn hex(text: &str) -> Vec<u8> {
    let digits: Vec<char> = text.chars().filter(|c| !c.is_whitespace()).collect();
    digits
        .chunks(2)
        .map(|pair| u8::from_str_radix(&pair.iter().collect::<String>(), 16).unwrap())
        .collect()
}

fn array<const N: usize>(text: &str) -> [u8; N] {
    hex(text).try_into().unwrap()
}

// RFC 9106, section 5.3.
#[test]
fn argon2id() {
    let params = ParamsBuilder::new()
        .m_cost(32)
        .t_cost(3)
        .p_cost(4)
        .data(AssociatedData::new(&[4; 12]).unwrap())
        .build()
        .unwrap();
    let argon =
        Argon2::new_with_secret(&[3; 8], Algorithm::Argon2id, Version::V0x13, params).unwrap();
    let mut tag = [0; 32];
    argon
        .hash_password_into(&[1; 32], &[2; 16], &mut tag)
        .unwrap();
    assert_eq!(
        tag,
        array("0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659")
    );
}

// draft-irtf-cfrg-xchacha-03, section A.3.1.
#[test]
fn xchacha20_poly1305() {
    let key: [u8; 32] = std::array::from_fn(|at| 0x80 + at as u8);
    let nonce: [u8; 24] = std::array::from_fn(|at| 0x40 + at as u8);
    let aad = hex("50515253c0c1c2c3c4c5c6c7");
    let plain = b"Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, \
        sunscreen would be it.";
    let sealed = XChaCha20Poly1305::new(&key.into())
        .encrypt(
            &XNonce::from(nonce),
            Payload {
                msg: plain,
                aad: &aad,
            },
        )
        .unwrap();
    let expected = hex(
        "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb731c7f1b0b4aa6440bf3a82f4eda7e39
         ae64c6708c54c216cb96b72e1213b4522f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f76b2383565d3fff9
         21f9664c97637da9768812f615c68b13b52e
         c0875924c1c7987947deafd8780acf49",
    );
    assert_eq!(sealed, expected);
}

// RFC 8032, section 7.1, tests 1 to 3.
#[test]
fn ed25519() {
    for (seed, public, message, signature) in [
        (
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
            "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155
             5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
        ),
        (
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da
             085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
        ),
        (
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac
             18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
        ),
    ] {
        let key = SigningKey::from_bytes(&array(seed));
        let message = hex(message);
        assert_eq!(key.verifying_key().to_bytes(), array(public));
        assert_eq!(key.sign(&message).to_bytes(), array(signature));
        key.verifying_key()
            .verify_strict(&message, &Signature::from_bytes(&array(signature)))
            .unwrap();
    }
}

// RFC 5869, appendix A, cases 1 to 3.
#[test]
fn hkdf_sha256() {
    let counting = |from: u8, to: u8| (from..=to).collect::<Vec<u8>>();
    for (ikm, salt, info, okm) in [
        (
            vec![0x0b; 22],
            counting(0, 0x0c),
            counting(0xf0, 0xf9),
            "3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865",
        ),
        (
            counting(0, 0x4f),
            counting(0x60, 0xaf),
            counting(0xb0, 0xff),
            "b11e398dc80327a1c8e7f78c596a49344f012eda2d4efad8a050cc4c19afa97c59045a99cac7827271cb41c65e590e09
             da3275600c2f09b8367793a9aca3db71cc30c58179ec3e87c14c01d5c1f3434f1d87",
        ),
        (
            vec![0x0b; 22],
            vec![],
            vec![],
            "8da4e775a563c18f715f802a063c5a31b8a11f5c5ee1879ec3454e5f3c738d2d9d201395faa4b61a96c8",
        ),
    ] {
        let expected = hex(okm);
        let mut derived = vec![0; expected.len()];
        Hkdf::<Sha256>::new(Some(&salt), &ikm).expand(&info, &mut derived).unwrap();
        assert_eq!(derived, expected);
    }
}

// RFC 7748, section 5.2, the two single runs.
#[test]
fn x25519() {
    for (scalar, point, expected) in [
        (
            "a546e36bf0527c9d3b16154b82465edd62144c0ac1fc5a18506a2244ba449ac4",
            "e6db6867583030db3594c1a424b15f7c726624ec26b3353b10a903a6d0ab1c4c",
            "c3da55379de9c6908e94ea4df28d084f32eccf03491c71f754b4075577a28552",
        ),
        (
            "4b66e9d4d1b4673c5ad22691957d6af5c11b6421e0ea01d42ca4169e7918ba0d",
            "e5210f12786811d3f4b7959d0538ae2c31dbe7106fc03c3efc4cd549c715a493",
            "95cbde9476e8907d7aade45cb4b873f88b595a68799fa152e6f8f7647aac7957",
        ),
    ] {
        assert_eq!(
            x25519_dalek::x25519(array(scalar), array(point)),
            array(expected)
        );
    }
}
