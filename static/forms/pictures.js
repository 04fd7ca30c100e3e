// A picture is sent as soon as it is chosen, and shown: then it is kept, whatever becomes of the form. Where it cannot
// be sent now, it goes with the form.

async function send(file) {
  const body = new FormData();
  body.append("file", file);
  const answer = await fetch("/pictures", { method: "POST", body });
  if (answer.status !== 200 && answer.status !== 422) throw new Error(`${answer.status}`);
  return answer.json();
}

function say(field, sentence) {
  let error = field.querySelector(".error");
  if (!error) {
    error = document.createElement("p");
    error.className = "error";
    error.setAttribute("role", "alert");
    field.append(error);
  }
  error.textContent = sentence;
  error.hidden = !sentence;
}

async function take(field, input) {
  const [file] = input.files;
  if (!file) return;
  field.setAttribute("aria-busy", "true");
  try {
    const { name, sentence } = await send(file);
    if (input.files[0] !== file) return; // another one was chosen meanwhile
    input.value = "";
    say(field, sentence ?? "");
    if (!name) return;
    field.querySelector("input[type=hidden]").value = name;
    const picture = field.querySelector("img");
    picture.src = `/pictures/${name}`;
    picture.hidden = false;
    const gone = field.querySelector("input[type=checkbox]");
    if (gone) gone.checked = false; // the one that was to go is gone
  } catch {
    say(field, ""); // it stays chosen
  } finally {
    field.removeAttribute("aria-busy");
  }
}

document.addEventListener("change", ({ target }) => {
  const field = target.type === "file" && target.closest(".picture");
  if (field) take(field, target);
});
