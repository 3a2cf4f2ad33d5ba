## Pairing: a coach takes a member in, and both compare four words.

more-random-bytes = Pairing needs { $wanted } random bytes; { $found } came.
stopped = Pairing stopped. Nothing was changed.

## The coach.

invite-somebody = Nobody is being paired. Invite a member to begin.
let-them-scan = Let the new member scan this. It works once, for ten minutes.
send-them = Send the new member this code. It works once, for ten minutes.
# $name is what the member's device calls them.
which-line = Show { $name } this code. Then { $name } reads you four words: which line is it?
which-line-read = { $name } reads you four words: which line is it?
# $label is what the coach calls the member.
taken-in = { $label } is in your crew. The next exchange sends the plan.
code-too-old = This code is more than ten minutes old. Invite again.
nothing-to-answer = No code waits for an answer. Invite the member first.
nothing-to-pick = There is no line to pick yet. Scan the member's code first.
forgotten-before = You have forgotten this person here. To join again they start in a new folder.
device-of-another = This answer names a device that is somebody else's. Ask the member to scan your code on their own phone.
label-taken = You call somebody else { $label } already. Choose another name, such as one with a second letter.

## The member.

ask-for-a-code = You are in no crew yet. Ask your coach for a code and scan it.
show-your-coach = Show this to your coach, then scan the next code your coach shows.
on-its-way = Your answer is on its way. When your coach has it, you compare four words.
read-to-your-coach = Read these words to your coach. Does your coach have the same line?
who-reads = Once you have joined, your coach can read what you log here from today on, on every device they use. What is shared can't be taken back. Whoever runs the folder can't read it, but sees when you train.
# Before joining. $entries were logged before today.
earlier-stay = { $entries ->
    [one] You have logged { $entries } entry before today. It stays with you, unless you share it too.
   *[other] You have logged { $entries } entries before today. They stay with you, unless you share them too.
}
# After joining.
earlier-withheld = { $entries ->
    [one] { $entries } entry from before you joined is not shared.
   *[other] { $entries } entries from before you joined are not shared.
}
earlier-shared = The next exchange sends what you logged before you joined.
nothing-withheld = There is nothing from before you joined that is not shared.
not-in-a-crew = You are in no crew yet. Ask your coach for a code: the first exchange comes after that.
joined = You have joined. The next exchange brings the plan, once your coach has confirmed too.
joined-already = This device is in a crew already. For another crew, start in a new folder.
another-crew = This device was in another crew. For a new crew, start in a new folder.
another-used-it = Another device has answered this code. Ask your coach for a new one.
scan-the-first = Scan the code your coach shows first.
nothing-to-compare = There are no words to compare yet. Scan your coach's codes first.

## Both.

nothing-under-way = No pairing is under way. A coach invites first, then the member joins with that code.
words-differ = The words differ, so somebody may be in between. Nothing was shared. Start again.
# $failed is how often it failed in a row.
two-failed = { $failed ->
    [one] { $failed } attempt failed. Pair in one room, screen to screen.
   *[other] { $failed } attempts failed. Pair in one room, screen to screen.
}
