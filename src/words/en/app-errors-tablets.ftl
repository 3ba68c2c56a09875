## Why a tablet doesn’t come in, and why the list of tablets stays as it is.

other-code-due = this is not the code that comes next: look at the other device for the right one
versions-differ = the two devices have different versions of this program: update both
code-damaged = this code is damaged: show it again
name-needed = a tablet needs a name, of at most 60 letters
answer-of-another = this answer doesn’t belong to the device that asked: begin anew, and beware of anyone between the two
packet-of-another = this packet is not for this device, or not from the one that it talked to: begin anew
packet-senseless = the lead’s packet makes no sense: begin anew
no-sign-here = “{ $sign }” is none of the letters and digits that can stand here
line-mistyped = line { $line } was not typed as it is shown: compare it sign by sign
end-missing = something is missing at the end
device-of-other-vault = this is about a device of another vault
list-changed = the list of devices has changed in the meantime: this should be change { $expected }
only-lead-changes = only a lead device may add or remove devices
change-unsigned = a change to the list of devices isn't signed by the device that it names
was-removed = this device was removed, and can only come back as a new one
becomes-viewer = a device that has written can't become a viewer: remove it and enrol it anew
none-to-remove = there is no such device to remove
last-lead = this is the last lead device: make another one a lead first
