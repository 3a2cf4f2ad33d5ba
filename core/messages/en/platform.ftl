### What a phone's system needs said beside the screens: notifications, permissions, folders.

# The kind of notification, in the phone's settings.
clock-channel = Running clock
# On the lock screen, for everybody to read.
clock-runs = A clock is running.
clock-is-paused = The clock is paused.
# When the system does not let the clock run on in the background.
cues-here-only = Cues come only while this screen is open. Keep it open until the clock ends.
# Notifications were refused.
no-notification = Notifications are off, so the lock screen shows no clock. Cues still come. You can turn notifications on in the phone's settings.
# No speech engine, or no voice for the language.
no-speech = This phone has no voice for this language. Cues come as tones and vibration. You can install a voice in the phone's settings.
# $place is a folder's name.
folder-gone = Holdfast may no longer use { $place }. Choose the folder again. Your log is saved on this phone.
folder-full = { $place } has no space left. Make room there, then exchange again. Your log is saved on this phone.
folder-loading = { $place } is still loading. Try again in a minute. Your log is saved on this phone.
# $what is what the system said.
folder-refused = { $place } did not take or give a file: { $what }. Try again, or choose another folder. Your log is saved on this phone.
# A file that was read back after it was written.
file-torn = The file did not arrive whole. Exchange again.
# What a job in the background could not do; $place is a folder or an address, $what a sentence.
exchange-unfinished = The last exchange with { $place } did not finish. { $what }
# Around the camera.
scan-here = Point the camera at the code on the other phone.
no-camera-right = Holdfast may not use the camera. Allow it in the phone's settings, or type the code.
no-camera = The camera cannot be used now. Close other apps that use it, or type the code.
# What was to be kept on the phone itself was not.
phone-full = This phone has no space left. Delete something, then try again. Your log is saved on this phone.
# The system has no app for it.
no-chooser = This phone has no app to choose files with. Install a file manager.
no-receiver = No app on this phone takes this file.
# $name is a file's name.
file-unreadable = { $name } cannot be read. Choose it again.
file-large = { $name } is too large for a plan. Choose another file.
# The file of carriers is damaged.
carriers-damaged = The list of folders and servers was damaged and is empty now. Add them again. Your log is saved on this phone.
# The password or the secret key of a server lies in the phone's keystore.
password-gone = The phone has lost the password or the key of { $place }. Remove this server and add it again.
