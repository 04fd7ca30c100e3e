"""A look into the page's own modules. Its script is one composed file, so that what is asked by a module's own address is
another instance, which knows nothing of the page."""

# To be used as `${OWN}["door/shop.js"]`, inside an async function.
OWN = "(await import(document.querySelector('script[type=module]').src)).modules"
LATER = "(await import(document.querySelector('script[type=module]').src)).later"
# A helper's page is made of modules that stand alone, each at its own address.
CLOCK = f"({OWN}?.['door/clock.js'] ?? await import('/static/door/clock.js'))"
