const code = document.getElementById("code"),
  said = document.getElementById("said");

const digits = 8;

async function enter() {
  // As it is read aloud or copied, with blanks between; one that cannot be it is not sent, since wrong ones are counted.
  const typed = code.value.replace(/[\s.-]/g, "");
  if (!new RegExp(`^[0-9]{${digits}}$`).test(typed)) {
    said.textContent = `A code has ${digits} digits: look at the terminal once more.`;
    code.select();
    return;
  }
  const answer = await fetch("/code", {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-PlankFit": "1" },
    body: JSON.stringify({ code: typed }),
  });
  if (answer.ok) {
    location.replace("/");
  } else {
    said.textContent = "That is not the code. A code serves one browser once: look at the terminal for the one that holds now. After five wrong ones from one device it is not heard until another code stands there.";
    code.select();
  }
}

document.getElementById("enter").addEventListener("click", enter);
code.addEventListener("keydown", (event) => event.key === "Enter" && enter());

// The square on the terminal has the code behind the #, which stays in the browser.
if (/^#\d{8}$/.test(location.hash)) {
  code.value = location.hash.slice(1);
  history.replaceState(null, "", location.pathname);
  enter();
} else {
  code.focus();
}
