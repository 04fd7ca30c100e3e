# The sentences of runboard, English: those about the shop's network, its certificates and how it is announced. The server
# alone says them: on the console, on the Shop page, on the welcome page.

## What is printed once the server listens.
lan-at = On the shop's network: { $pages }
lan-at-https = With the shop's certificate: { $pages }
lan-trust = How to make a device trust it: { $page }
lan-either = { $first } or { $second }

## Why there is no page with the certificate.
lan-no-https-authority = There is no https page. { $why } Then start runboard again.
lan-no-https-disk = There is no https page: its certificate could not be made ({ $why }).
lan-no-https-port = There is no https page: port { $port } cannot be used ({ $why }). Name another with --https-port.

## What is wrong with the certificates. Those of a file stand after 'cannot be used' and 'could not be used'.
lan-authority-unusable = The shop's certificate authority in { $file } cannot be used: { $why }. Put the file back from a backup. If there is none, move the folder { $folder } away: a new authority is made, which every phone has to trust once.
lan-authority-ended = The shop's certificate authority in { $file } ended on { $day }. If this computer's date is right, move the folder { $folder } away: a new authority is made, which every phone has to trust once.
lan-authority-taken-away = { $file } was taken away while it was being made. Start again.
lan-authority-ends = The shop's certificate authority ends on { $day }. Then every phone has to trust a new one.
lan-leaf-unusable = The server's certificate in { $file } could not be used: { $why }. A new one was made.
lan-file-damaged = it is damaged or was written only in part
lan-file-other-key = its key does not belong to its certificate
lan-file-gone = it is not there, though a leaf of it is
lan-file-no-authority = it is no certificate authority of a shop
lan-key-was-open = Other users of this computer could read the key in { $file }. Now they no longer can.
lan-clock-behind = This computer's clock says { $day }. That is before its certificates were made. Set the clock.
lan-not-looked-after = The server's certificate could not be checked or renewed ({ $why }). The one in use goes on.

## What is wrong with announcing.
lan-no-network = This computer is on no network now, so phones cannot find it by name.
lan-not-announced = This computer could not announce its name on the network ({ $why }). Its address works as before.

## What an iPhone shows before it installs the certificate.
lan-profile = Runboard of { $host }
lan-profile-about = Lets this device trust the page of the shop's own computer. It can vouch only for that computer's names and for addresses of private networks.
