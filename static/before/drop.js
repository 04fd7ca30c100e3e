// A file dropped onto a form is put into its file field, as if it had been chosen there. 'send': the form is sent as soon as
// one is there; 'take': when somebody presses.

const formAt = (target) => target instanceof Element && target.closest("[data-drop]");
const isFile = (event) => [...(event.dataTransfer?.types ?? [])].includes("Files");

function take(form, files) {
  const input = form.querySelector("input[type=file]");
  if (!input || !files.length) return;
  const one = new DataTransfer();
  one.items.add(files[0]);
  input.files = one.files;
  input.dispatchEvent(new Event("change", { bubbles: true }));
}

document.addEventListener("dragover", (event) => {
  const form = formAt(event.target);
  if (!form || !isFile(event)) return;
  event.preventDefault();
  form.classList.add("over");
});

document.addEventListener("dragleave", (event) => {
  const form = formAt(event.target);
  if (form && !form.contains(event.relatedTarget)) form.classList.remove("over");
});

document.addEventListener("drop", (event) => {
  const form = formAt(event.target);
  if (!form || !isFile(event)) return;
  event.preventDefault();
  form.classList.remove("over");
  take(form, event.dataTransfer.files);
});

document.addEventListener("change", ({ target }) => {
  const form = target.type === "file" && formAt(target);
  if (form && form.dataset.drop === "send" && target.files.length) form.requestSubmit();
});
