//! The vectors of the standards.
//!
//! Taken from the libraries' own test data: Argon2id, XChaCha20-Poly1305 (key, message and associated data), X25519. From
//! memory: the others, and the ciphertext of XChaCha20-Poly1305; a vector remembered wrongly could not pass.

use super::{Case, Ended, Set};
use crate::frame::PublicKey;
use crate::hpke::{self, Sealed};
use crate::random::{NoRandomness, Source};
use crate::secret::Secret;
use argon2::{Algorithm, Argon2, AssociatedData, ParamsBuilder, Version};
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{ChaCha20Poly1305, KeyInit};
use ed25519_dalek::{Signer, SigningKey};
use hkdf::Hkdf;
use sha2::Sha256;

/// What RFC 8439 and the draft of XChaCha20 both seal.
const SUNSCREEN: &[u8] =
    b"Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, \
    sunscreen would be it.";
/// What both say beside it.
const BESIDE: &str = "50515253c0c1c2c3c4c5c6c7";

pub fn sets() -> Vec<Set> {
    vec![
        set(
            "RFC 8439, ChaCha20-Poly1305",
            [
                ("2.8.2, sealed", chacha20_sealed()),
                ("A.5, opened", chacha20_opened()),
            ],
        ),
        set(
            "draft-irtf-cfrg-xchacha-03, XChaCha20-Poly1305",
            [("A.3.1, sealed", xchacha20_sealed())],
        ),
        set("RFC 9106, Argon2id", [("5.3", argon2id())]),
        set("RFC 9180, HPKE", [("A.2.1, encryption 0", hpke_base())]),
        set(
            "RFC 8032, Ed25519",
            ED25519.map(|vector| (vector.place, signs(&vector))),
        ),
        set(
            "RFC 5869, HKDF-SHA256",
            [
                ("A.1", derives_1()),
                ("A.2", derives_2()),
                ("A.3", derives_3()),
            ],
        ),
        set(
            "RFC 7748, X25519",
            X25519.map(|vector| (vector.0, multiplies(vector))),
        ),
    ]
}

/// As many cases as were written down.
fn set<const N: usize>(name: &'static str, cases: [(&str, bool); N]) -> Set {
    let case = |(place, held): (&str, bool)| Case {
        name: place.to_owned(),
        ended: if held {
            Ended::Passed
        } else {
            Ended::Failed("something else came out")
        },
    };
    Set {
        name,
        stated: N,
        cases: cases.map(case).into(),
    }
}

fn hex(text: &str) -> Vec<u8> {
    let digits: Vec<char> = text.chars().filter(|sign| !sign.is_whitespace()).collect();
    let pairs = digits.chunks(2).map(|pair| pair.iter().collect::<String>());
    pairs
        .map(|pair| u8::from_str_radix(&pair, 16).expect("a vector is written in base 16"))
        .collect()
}

fn array<const N: usize>(text: &str) -> [u8; N] {
    hex(text).try_into().expect("a vector has its length")
}

fn counting<const N: usize>(from: u8) -> [u8; N] {
    std::array::from_fn(|at| from + at as u8)
}

fn chacha20_sealed() -> bool {
    let nonce: [u8; 12] = array("070000004041424344454647");
    let payload = Payload {
        msg: SUNSCREEN,
        aad: &hex(BESIDE),
    };
    let sealed = ChaCha20Poly1305::new(&counting(0x80).into()).encrypt(&nonce.into(), payload);
    let expected = hex(
        "d31a8d34648e60db7b86afbc53ef7ec2a4aded51296e08fea9e2b5a736ee62d63dbea45e8ca9671282fafb69da92728b
         1a71de0a9e060b2905d6a5b67ecd3b3692ddbd7f2d778b8c9803aee328091b58fab324e4fad675945585808b4831d7bc
         3ff4def08e4b7a9de576d26586cec64b61161ae10b594f09e26a7e902ecbd0600691",
    );
    sealed == Ok(expected)
}

fn chacha20_opened() -> bool {
    let key: [u8; 32] = array("1c9240a5eb55d38af333888604f6b5f0473917c1402b80099dca5cbc207075c0");
    let nonce: [u8; 12] = array("000000000102030405060708");
    let payload = Payload {
        msg: &hex(
            "64a0861575861af460f062c79be643bd5e805cfd345cf389f108670ac76c8cb24c6cfc18755d43eea09ee94e382d26b0
             bdb7b73c321b0100d4f03b7f355894cf332f830e710b97ce98c8a84abd0b948114ad176e008d33bd60f982b1ff37c855
             9797a06ef4f0ef61c186324e2b3506383606907b6a7c02b0f9f6157b53c867e4b9166c767b804d46a59b5216cde7a4e9
             9040c5a40433225ee282a1b0a06c523eaf4534d7f83fa1155b0047718cbc546a0d072b04b3564eea1b422273f548271a
             0bb2316053fa76991955ebd63159434ecebb4e466dae5a1073a6727627097a1049e617d91d361094fa68f0ff77987130
             305beaba2eda04df997b714d6c6f2c29a6ad5cb4022b02709beead9d67890cbb22392336fea1851f38",
        ),
        aad: &hex("f33388860000000000004e91"),
    };
    let opened = ChaCha20Poly1305::new(&key.into()).decrypt(&nonce.into(), payload);
    let expected = "Internet-Drafts are draft documents valid for a maximum of six months and may be updated, \
        replaced, or obsoleted by other documents at any time. It is inappropriate to use Internet-Drafts as \
        reference material or to cite them other than as /\u{201c}work in progress./\u{201d}";
    opened.as_deref() == Ok(expected.as_bytes())
}

fn xchacha20_sealed() -> bool {
    let key = Secret::from_bytes(counting(0x80));
    let nonce = counting(0x40);
    let expected = hex(
        "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb731c7f1b0b4aa6440bf3a82f4eda7e39
         ae64c6708c54c216cb96b72e1213b4522f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f76b2383565d3fff9
         21f9664c97637da9768812f615c68b13b52e
         c0875924c1c7987947deafd8780acf49",
    );
    let opened = key.open(&nonce, &hex(BESIDE), &expected);
    key.seal(&nonce, &hex(BESIDE), SUNSCREEN) == expected
        && opened.is_ok_and(|plain| *plain == SUNSCREEN)
}

/// With a secret and associated data, which the vault's own stretching has not: the library that it calls.
fn argon2id() -> bool {
    let params = ParamsBuilder::new()
        .m_cost(32)
        .t_cost(3)
        .p_cost(4)
        .data(AssociatedData::new(&[4; 12]).expect("twelve bytes are few enough"))
        .build()
        .expect("the standard's parameters are good ones");
    let argon = Argon2::new_with_secret(&[3; 8], Algorithm::Argon2id, Version::V0x13, params)
        .expect("eight bytes are few enough");
    let mut tag = [0; 32];
    let stretched = argon.hash_password_into(&[1; 32], &[2; 16], &mut tag);
    let expected = array("0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659");
    stretched.is_ok() && tag == expected
}

/// Gives these bytes in place of random ones.
struct Given([u8; 32]);

impl Source for Given {
    fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
        bytes.copy_from_slice(&self.0);
        Ok(())
    }
}

fn hpke_base() -> bool {
    let info = hex("4f6465206f6e2061204772656369616e2055726e");
    let aad = hex("436f756e742d30");
    let plain = hex("4265617574792069732074727574682c20747275746820626561757479");
    let receiver = array("4310ee97d88cc1f088a5576c77ab0cf5c3ac797f3d95139c6c84b5429c59662a");
    let secret = array("8057991eef8f1f1af18f4a9491d16a1ce333f695d4db8e38da75975c4478e0fb");
    let ephemeral = array("909a9b35d3dc4713a5e72a4da274b55d3d3821a37e5d099e74a647db583a904b");
    let expected = Sealed {
        enc: array("1afa08d3dec047a643885163f1180476fa7ddb54c6a8029ea33f95796bf2ac4a"),
        ciphertext: hex(
            "1c5250d8034ec2b784ba2cfd69dbdb8af406cfe3ff938e131f0def8c8b60b4db21993c62ce81883d2dd1b51a28",
        ),
    };
    let opened = hpke::open(&Secret::from_bytes(secret), &info, &aad, &expected);
    let sealed = hpke::seal(&receiver, &info, &aad, &plain, &mut Given(ephemeral));
    sealed == Ok(expected) && opened.is_ok_and(|opened| *opened == plain)
}

/// A key pair and what it signs.
struct Signed {
    place: &'static str,
    seed: &'static str,
    public: &'static str,
    message: &'static str,
    signature: &'static str,
}

const ED25519: [Signed; 4] = [
    Signed {
        place: "7.1, test 1",
        seed: "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        public: "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        message: "",
        signature: "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155
            5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    },
    Signed {
        place: "7.1, test 2",
        seed: "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        public: "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        message: "72",
        signature: "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da
            085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    },
    Signed {
        place: "7.1, test 3",
        seed: "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        public: "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        message: "af82",
        signature: "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac
            18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    },
    Signed {
        place: "7.1, test of SHA-512",
        seed: "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42",
        public: "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
        message: "ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a
            2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f",
        signature: "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b589
            09351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704",
    },
];

fn signs(vector: &Signed) -> bool {
    let key = SigningKey::from_bytes(&array(vector.seed));
    let (message, signature) = (hex(vector.message), array(vector.signature));
    let public = PublicKey::from(key.verifying_key());
    public.bytes() == array(vector.public)
        && key.sign(&message).to_bytes() == signature
        && public.signed(&message, &signature)
}

fn derives(ikm: &[u8], salt: &[u8], info: &[u8], okm: &str) -> bool {
    let expected = hex(okm);
    let mut derived = vec![0; expected.len()];
    let expanded = Hkdf::<Sha256>::new(Some(salt), ikm).expand(info, &mut derived);
    expanded.is_ok() && derived == expected
}

fn derives_1() -> bool {
    derives(
        &[0x0b; 22],
        &counting::<13>(0),
        &counting::<10>(0xf0),
        "3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865",
    )
}

fn derives_2() -> bool {
    derives(
        &counting::<80>(0),
        &counting::<80>(0x60),
        &counting::<80>(0xb0),
        "b11e398dc80327a1c8e7f78c596a49344f012eda2d4efad8a050cc4c19afa97c59045a99cac7827271cb41c65e590e09
         da3275600c2f09b8367793a9aca3db71cc30c58179ec3e87c14c01d5c1f3434f1d87",
    )
}

fn derives_3() -> bool {
    let okm =
        "8da4e775a563c18f715f802a063c5a31b8a11f5c5ee1879ec3454e5f3c738d2d9d201395faa4b61a96c8";
    let by_the_vault = Secret::derive_from(&[0x0b; 22], &[]);
    derives(&[0x0b; 22], &[], &[], okm) && *by_the_vault.bytes() == hex(okm)[..32]
}

/// A place, a scalar, a point, and the point times the scalar.
const X25519: [(&str, &str, &str, &str); 2] = [
    (
        "5.2, the first",
        "a546e36bf0527c9d3b16154b82465edd62144c0ac1fc5a18506a2244ba449ac4",
        "e6db6867583030db3594c1a424b15f7c726624ec26b3353b10a903a6d0ab1c4c",
        "c3da55379de9c6908e94ea4df28d084f32eccf03491c71f754b4075577a28552",
    ),
    (
        "5.2, the second",
        "4b66e9d4d1b4673c5ad22691957d6af5c11b6421e0ea01d42ca4169e7918ba0d",
        "e5210f12786811d3f4b7959d0538ae2c31dbe7106fc03c3efc4cd549c715a493",
        "95cbde9476e8907d7aade45cb4b873f88b595a68799fa152e6f8f7647aac7957",
    ),
];

fn multiplies((_, scalar, point, expected): (&str, &str, &str, &str)) -> bool {
    x25519_dalek::x25519(array(scalar), array(point)) == array(expected)
}
