## What stands between a device and its carrier. $carrier is an address, without user and password.

wrong-password = { $carrier } does not accept this user name and password, or the user may not read there. Check both; many servers want a password made for one app.
wrong-key = { $carrier } does not accept this key, or the key may not read there. Check the key id, the secret key and what the key is allowed to do.
# $ways are names such as Digest.
other-sign-in = { $carrier } asks for another way of signing in ({ $ways }). Holdfast signs in with a user name and a password (Basic). Turn that on at the server.
not-there = { $carrier } is not there. Check the address, or create this folder or bucket on the server first.
read-only = You can read { $carrier } but not write there. Ask whoever runs it for the right to write. Your log is saved on this device.
full = { $carrier } is full. Make room there, then exchange again. Your log is saved on this device.
upload-limit = { $carrier } does not accept a file of { $bytes } bytes. Raise the server's limit for uploads to 4 MiB.
# $to is an address that the server gave.
moved = { $carrier } sends on to { $to }. Your password was not sent there. If the carrier has moved, set its new address.
# $region is a name that the server gave.
other-region = The bucket at { $carrier } is in the region { $region }. Set that region for this carrier.
clock-off = { $carrier } refuses the time of this device. Set date and time to automatic, then try again.
clock-ahead-minutes = { $minutes ->
    [one] This device's clock is { $minutes } minute ahead of { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $minutes } minutes ahead of { $carrier }. Set date and time to automatic, then try again.
}
clock-behind-minutes = { $minutes ->
    [one] This device's clock is { $minutes } minute behind { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $minutes } minutes behind { $carrier }. Set date and time to automatic, then try again.
}
clock-ahead-hours = { $hours ->
    [one] This device's clock is { $hours } hour ahead of { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $hours } hours ahead of { $carrier }. Set date and time to automatic, then try again.
}
clock-behind-hours = { $hours ->
    [one] This device's clock is { $hours } hour behind { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $hours } hours behind { $carrier }. Set date and time to automatic, then try again.
}
clock-ahead-days = { $days ->
    [one] This device's clock is { $days } day ahead of { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $days } days ahead of { $carrier }. Set date and time to automatic, then try again.
}
clock-behind-days = { $days ->
    [one] This device's clock is { $days } day behind { $carrier }. Set date and time to automatic, then try again.
   *[other] This device's clock is { $days } days behind { $carrier }. Set date and time to automatic, then try again.
}
# $status is a number of HTTP.
busy = { $carrier } is busy or out of order (status { $status }). Try again later. Your log is saved on this device.
not-webdav = What answers at { $carrier } is not a WebDAV folder. Check the address. On a public network, sign in to the network first.
not-s3 = What answers at { $carrier } is not an S3-compatible server. Check the address. On a public network, sign in to the network first.
too-large = { $carrier } sent more than { $largest } bytes, which is more than Holdfast reads. Nothing was taken from it. Clear this folder of files that are not Holdfast's.
cannot-move = { $carrier } cannot rename files, so no file can be written safely. Allow the method MOVE on the server.
# $status is a number of HTTP.
refused = { $carrier } answered with status { $status }, which Holdfast does not expect. Ask whoever runs the server.
interrupted = The connection to { $carrier } broke. Try again; what was already delivered stays there.
# $said is what the system said of the certificate, in its own words.
certificate = The certificate of { $carrier } is not trusted: { $said }. Check this device's date, then ask whoever runs the server. Nothing was sent.
# For whoever builds an app.
no-such-name = No file of a carrier has this name.

## What is wrong with a carrier's settings.

no-path = The path of the folder is missing.
no-scheme = The address must begin with https://.
no-host = The address names no server. Write it like https://files.example.org/cellar.
host-letters = The name of the server has letters beyond a to z. Write it in its form that begins with xn--.
no-such-port = The port in the address must be a number from 1 to 65535.
user-in-address = The address holds a user name or password. Give these apart from the address, so that they are shown nowhere.
query-in-address = The address must end before its question mark or number sign.
no-such-path = The path in the address cannot be used. Write it without .., backslashes and encoded slashes.
long-address = The address is longer than 2,000 signs.
# $server is an address.
unencrypted = { $server } is not encrypted: anybody on the way could read the password. Use https://, or say that unencrypted is meant.
no-such-user = The user name must have 1 to 256 signs and no colon.
no-such-password = The password is missing, or has signs that no password has.
no-such-region = The region must have 1 to 64 letters, digits and hyphens. Use us-east-1 where the server has none.
no-such-bucket = The bucket cannot be called "{ $bucket }". A bucket's name has 3 to 63 small letters, digits, hyphens and dots.
needs-path-style = This bucket cannot stand before the name of the server. Use path style.
no-such-prefix = The prefix, a folder in the bucket, may have letters, digits, hyphens, dots and slashes, at most 200.
no-such-key-id = The key id must have 1 to 128 letters and digits.
no-such-secret = The secret key is missing, or has signs that no key has.

## What is no fault.

offline = No connection to { $carrier }. Your log is saved on this device; exchange again when you are online.
