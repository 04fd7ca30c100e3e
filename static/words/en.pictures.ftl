# Pictures, as they are taken in.
refused-picture-too-large = This picture is over { $most } MB. Send a smaller one. Nothing else is lost.
refused-picture-too-many-pixels = This picture is over { $most } million pixels. Set the phone's camera to a smaller size. Nothing else is lost.
refused-picture-unreadable = This is not a JPEG, PNG or WebP picture. On an iPhone choose 'Most Compatible' under Settings, Camera, Formats. Nothing else is lost.
refused-picture-wrong = A picture in the file is not what its name says ({ $name }), so nothing was imported. Save the file again where it comes from.
