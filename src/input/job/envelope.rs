//! Bytes in an envelope that says its version, its length and its checksum, in letters that travel.
//!
//! Two scripts: one for addresses (base64url), and one for keyboard-type scanners and for typing:
//! base32 in capitals, its O, I, Y and Z written as the digits it leaves free. So 0 and O, 1 and I
//! mean the same, and a scanner set to another keyboard, which would swap Y and Z, does no harm.

use base32ct::{Base32UpperUnpadded, Encoding as _};
use base64ct::{Base64UrlUnpadded, Encoding as _};
use crc::{CRC_32_ISO_HDLC, Crc, NoTable};

/// Version, length (two bytes, low one first), checksum (four bytes, low one first).
const HEAD: usize = 7;
/// Bytes before the checksum.
const BEFORE_SUM: usize = 3;
/// The sum of every error in one place, two places or a run of up to 32 bits differs.
const SUM: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);

/// How bytes are written in letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Script {
    /// For an address.
    Address,
    /// For a scanner that types, and for hands.
    Keys,
}

/// Why an envelope cannot be opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Broken {
    /// Its end is missing.
    Cut,
    /// Something in it is not what was written.
    Altered,
}

impl Script {
    /// Bits a letter holds.
    const fn bits(self) -> usize {
        match self {
            Self::Address => 6,
            Self::Keys => 5,
        }
    }
    /// A letter as the library writes it; nothing where the script has no such letter.
    fn known(self, letter: char) -> Option<char> {
        match (self, letter.to_ascii_uppercase()) {
            (Self::Address, _) => {
                (letter.is_ascii_alphanumeric() || "-_".contains(letter)).then_some(letter)
            }
            (Self::Keys, '0') => Some('O'),
            (Self::Keys, '1') => Some('I'),
            (Self::Keys, '8') => Some('Y'),
            (Self::Keys, '9') => Some('Z'),
            (Self::Keys, 'Y' | 'Z') => None,
            (Self::Keys, letter) => letter.is_ascii_alphanumeric().then_some(letter),
        }
    }
    /// Spaces and line ends come in on the way; hands write dashes too.
    fn passes_over(self, letter: char) -> bool {
        letter.is_whitespace() || (self == Self::Keys && "-–—·".contains(letter))
    }
    /// In the library's letters.
    fn encode(self, bytes: &[u8]) -> String {
        match self {
            Self::Address => Base64UrlUnpadded::encode_string(bytes),
            Self::Keys => Base32UpperUnpadded::encode_string(bytes),
        }
    }
    fn write(self, bytes: &[u8]) -> String {
        let letters = self.encode(bytes);
        match self {
            Self::Address => letters,
            Self::Keys => letters
                .chars()
                .map(|letter| match letter {
                    'O' => '0',
                    'I' => '1',
                    'Y' => '8',
                    'Z' => '9',
                    letter => letter,
                })
                .collect(),
        }
    }
    fn read(self, letters: &str) -> Option<Vec<u8>> {
        match self {
            Self::Address => Base64UrlUnpadded::decode_vec(letters).ok(),
            Self::Keys => Base32UpperUnpadded::decode_vec(letters).ok(),
        }
    }
    /// Letters that so many bytes take.
    const fn letters(self, bytes: usize) -> usize {
        (bytes * 8).div_ceil(self.bits())
    }
}

fn sum(before: &[u8], content: &[u8]) -> [u8; 4] {
    let mut digest = SUM.digest();
    digest.update(before);
    digest.update(content);
    digest.finalize().to_le_bytes()
}

/// Puts a content into an envelope and writes it; nothing when it is longer than one can say.
pub fn seal(version: u8, content: &[u8], script: Script) -> Option<String> {
    let [low, high] = u16::try_from(content.len()).ok()?.to_le_bytes();
    let mut bytes = vec![version, low, high];
    let sum = sum(&bytes, content);
    bytes.extend(sum);
    bytes.extend(content);
    Some(script.write(&bytes))
}

/// Opens an envelope that a text begins with: its version and its content. What follows it after a
/// space is left alone.
///
/// # Errors
/// The end is missing, or something was altered.
pub fn open(text: &str, script: Script) -> Result<(u8, Vec<u8>), Broken> {
    let mut letters = String::new();
    let mut rest = text.chars();
    let mut ended = None;
    // As many letters as the head says there are, once it can be read.
    let mut most = usize::MAX;
    while letters.len() < most {
        match rest.next() {
            None => break,
            Some(letter) => match script.known(letter) {
                Some(letter) => letters.push(letter),
                None if script.passes_over(letter) => {}
                None => {
                    ended = Some(letter);
                    break;
                }
            },
        }
        if most == usize::MAX
            && let Some([_, low, high, ..]) = script.read(&letters).as_deref()
        {
            most = script.letters(HEAD + usize::from(u16::from_le_bytes([*low, *high])));
        }
    }
    if letters.len() < most {
        return Err(if ended.is_some() { Broken::Altered } else { Broken::Cut });
    }
    if rest.next().is_some_and(|letter| script.known(letter).is_some()) {
        return Err(Broken::Altered);
    }
    // The last letter may hold bits that stand for nothing: only one way of writing is the right one.
    let whole = |bytes: &Vec<u8>| script.encode(bytes) == letters;
    let bytes = script.read(&letters).filter(whole).ok_or(Broken::Altered)?;
    let (head, content) = bytes.split_at_checked(HEAD).ok_or(Broken::Altered)?;
    let (before, told) = head.split_at_checked(BEFORE_SUM).ok_or(Broken::Altered)?;
    match before.first() {
        Some(version) if sum(before, content) == told => Ok((*version, content.to_vec())),
        _ => Err(Broken::Altered),
    }
}
