# Pictures, as they are taken in.
refused-picture-too-large = This picture has more than { $most } MB, so it is not taken. Send a smaller one. Nothing else is lost.
refused-picture-too-many-pixels = This picture has more than { $most } million pixels, so it is not taken. Set the phone's camera to a smaller size. Nothing else is lost.
refused-picture-unreadable = This is no JPEG, PNG or WebP picture, so it is not taken. On an iPhone choose 'Most Compatible' under Settings, Camera, Formats. Nothing else is lost.
refused-picture-wrong = A picture in the file is not what its name says ({ $name }), so nothing is taken. Save the file anew where it comes from.
