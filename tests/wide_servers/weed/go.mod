// SeaweedFS at one commit: the names of its releases are no versions to Go.
module weed

go 1.26.6

require github.com/seaweedfs/seaweedfs v0.0.0-20261109003541-7506e5f91cd6

// Deleted where it was. SeaweedFS itself takes this fork, which a module that requires it has to say again.
replace github.com/tyler-smith/go-bip39 => github.com/cosmos/go-bip39 v1.0.0
