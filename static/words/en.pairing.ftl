# The sentences of runboard, English: those about devices and who may do what. The server alone says them.

refused-access = Only a lead's phone can do that.
refused-pairing-code-wrong = That code is not valid. A code works once, for ten minutes. Ask for a new one, and check each character as you type.
refused-pairing-too-often = Too many wrong codes. Wait { $minutes } min, then type a new one.
refused-device-revoked = That device was shut out. Pair it again.
refused-device-unknown = There is no such device. Check the list on the Shop page.
refused-device-nameless = Give the device a name.

pairing-unknown = This device is not paired with the shop. Open runboard's first page on it and type a code there.
pairing-qr = The address with the code, for a camera
pairing-qr-page = The address of this page, for a phone's camera
device-iphone = iPhone
device-ipad = iPad
device-android = Android phone
device-mac = Mac
device-pc = PC
device-phone = Phone
