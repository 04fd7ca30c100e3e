# The sentences of runboard, English: those about devices and who may do what. The server alone says them.

refused-access = That is for a lead's phone to press.
refused-pairing-code-wrong = That code is not valid. A code works once, for ten minutes. Ask for a new one, and check each character as you type.
refused-pairing-too-often = Too many wrong codes. Wait { $minutes } min, then type a fresh one.
refused-device-revoked = That device was shut out. Pair it anew.
refused-device-unknown = There is no such device. Look at the list on the Shop page.
refused-device-nameless = Write a name for the device.

pairing-unknown = This device is not paired with the shop. Open runboard's first page on it, and type a code there.
pairing-qr = The address with the code, for a camera
pairing-qr-page = The address of this page, for a phone's camera
device-iphone = iPhone
device-ipad = iPad
device-android = Android phone
device-mac = Mac
device-pc = PC
device-phone = Phone
