//! The first line: who wrote the rest, and their signature.
//!
//! Nothing but bytes of fixed length is looked at before the signature is checked.

use data_encoding::BASE64URL_NOPAD;
use sha2::{Digest, Sha256};

use super::SealedFault;
use crate::planted::{Planted, planted};
use crate::trust::{
    CERTIFICATE_SIGNS, Certificate, CertificateFault, Keys, LEAF, SIGNATURE_BYTES, is_signed,
};

const BEGIN: &str = "holdfast-leaf-1 ";
/// Signs of a signature in base64url.
const SIGNATURE_SIGNS: usize = 86;
/// Bytes of the line with its newline.
pub(super) const FIRST_LINE_BYTES: usize =
    BEGIN.len() + CERTIFICATE_SIGNS + 1 + SIGNATURE_SIGNS + 1;

/// SHA-256 of all after the first line: `... | tail -n +2 | sha256sum` prints it.
pub(super) fn content_hash(body: &[u8]) -> [u8; 32] {
    Sha256::digest(body).into()
}

/// The first line of a body with this hash.
pub(super) fn write(certificate: &Certificate, content: &[u8; 32], device: &Keys) -> String {
    signed(certificate, &sign(certificate, content, device))
}

/// A device's signature under a body with this hash.
pub(super) fn sign(certificate: &Certificate, content: &[u8; 32], device: &Keys) -> Signature {
    device.sign(&LEAF, &[&certificate.digest(), content])
}

/// The first line with a signature that was made before.
pub(super) fn signed(certificate: &Certificate, signature: &Signature) -> String {
    format!("{BEGIN}{} {}\n", certificate.text(), BASE64URL_NOPAD.encode(signature))
}

/// A signature as its bytes.
pub(super) type Signature = [u8; SIGNATURE_BYTES];

/// What a first line says of the rest, and the rest.
pub(super) struct Signed<'a> {
    pub(super) certificate: Certificate,
    pub(super) signature: Signature,
    /// The hash of the rest.
    pub(super) content: [u8; 32],
    pub(super) body: &'a [u8],
}

/// Reads the first line of a text and checks certificate and signature.
pub(super) fn read(text: &[u8]) -> Result<Signed<'_>, SealedFault> {
    let (line, body) = text.split_at_checked(FIRST_LINE_BYTES).ok_or(SealedFault::FirstLine)?;
    let line = std::str::from_utf8(line).map_err(|_| SealedFault::FirstLine)?;
    let signed = line.strip_suffix('\n').and_then(|line| line.strip_prefix(BEGIN));
    let Some((certificate, signature)) = signed.and_then(|line| line.split_once(' ')) else {
        return Err(match version(line) {
            Some(found) if found > super::SEALED_FORMAT => SealedFault::Newer { found },
            _ => SealedFault::FirstLine,
        });
    };
    if certificate.len() != CERTIFICATE_SIGNS || signature.len() != SIGNATURE_SIGNS {
        return Err(SealedFault::FirstLine);
    }
    let certificate = Certificate::read_text(certificate).map_err(|fault| match fault {
        CertificateFault::Form => SealedFault::FirstLine,
        _ => SealedFault::Certificate,
    })?;
    let signature = BASE64URL_NOPAD.decode(signature.as_bytes()).ok();
    let signature: Option<Signature> = signature.and_then(|read| read.try_into().ok());
    let signature = signature.ok_or(SealedFault::FirstLine)?;
    let content = content_hash(body);
    let key = certificate.device_keys().sign;
    let signed = is_signed(&key, &LEAF, &[&certificate.digest(), &content], &signature);
    match signed || planted(Planted::UncheckedSignature) {
        true => Ok(Signed { certificate, signature, content, body }),
        false => Err(SealedFault::Signature),
    }
}

/// The format that a first line of another one names.
fn version(line: &str) -> Option<u32> {
    line.strip_prefix("holdfast-leaf-")?.split(' ').next()?.parse().ok()
}
