//! What an S3-compatible server means by an error: its code, which tells more than the status.

use super::super::xml;

/// What an error's body says.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Said {
    pub(super) code: String,
    /// The region the bucket is in, when the request named another.
    pub(super) region: Option<String>,
    /// The host the bucket is at, when it is another.
    pub(super) endpoint: Option<String>,
}

/// Reads an error's body. What cannot be read says nothing: then the status speaks alone.
pub(super) fn read(body: &[u8]) -> Said {
    let mut said = Said::default();
    let read = xml::read(body, |path, text| {
        match path {
            ["Error", "Code"] => said.code = text.to_owned(),
            ["Error", "Region"] => said.region = Some(text.to_owned()),
            ["Error", "Endpoint"] => said.endpoint = Some(text.to_owned()),
            _ => {}
        }
        true
    });
    if read.is_ok() { said } else { Said::default() }
}

/// The ways in which a request fails, in the words of a carrier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Meaning {
    NoRight,
    Key,
    Clock,
    NoBucket,
    NoFile,
    Region,
    Elsewhere,
    Full,
    Limit,
    Busy,
    NoCondition,
    Unknown,
}

/// What a code means. Amazon S3 API reference, "Error responses", list of error codes; the rest are those of other
/// servers, for quotas above all.
pub(super) fn meaning(code: &str) -> Meaning {
    match code {
        "AccessDenied" | "AllAccessDisabled" | "MethodNotAllowed" => Meaning::NoRight,
        "InvalidAccessKeyId"
        // What versitygw says of a key id that it does not know, with status 404.
        | "XAdminUserNotFound"
        | "SignatureDoesNotMatch"
        | "InvalidSecurity"
        | "InvalidToken"
        | "ExpiredToken"
        | "NotSignedUp"
        | "AccountProblem"
        | "AuthFailure" => Meaning::Key,
        "RequestTimeTooSkewed" | "RequestExpired" => Meaning::Clock,
        "NoSuchBucket" | "InvalidBucketName" => Meaning::NoBucket,
        "NoSuchKey" | "NoSuchVersion" => Meaning::NoFile,
        "AuthorizationHeaderMalformed" | "IllegalLocationConstraintException" => Meaning::Region,
        "PermanentRedirect" | "TemporaryRedirect" | "Redirect" => Meaning::Elsewhere,
        "QuotaExceeded"
        | "OverQuota"
        | "ServiceQuotaExceededException"
        | "InsufficientStorage"
        | "InsufficientCapacity"
        | "StorageFull"
        | "StorageQuotaExceeded"
        | "XMinioStorageFull"
        | "XMinioAdminBucketQuotaExceeded"
        | "TooManyObjects" => Meaning::Full,
        "EntityTooLarge" => Meaning::Limit,
        "SlowDown"
        | "ServiceUnavailable"
        | "InternalError"
        | "OperationAborted"
        | "RequestTimeout"
        | "ConditionalRequestConflict"
        | "TooManyRequests" => Meaning::Busy,
        "NotImplemented" => Meaning::NoCondition,
        _ => Meaning::Unknown,
    }
}
