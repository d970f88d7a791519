const code = document.getElementById("code"),
  said = document.getElementById("said");

async function enter() {
  const answer = await fetch("/code", {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-PlankFit": "1" },
    body: JSON.stringify({ code: code.value.trim() }),
  });
  if (answer.ok) {
    location.replace("/");
  } else {
    said.textContent = "That is not the code. A code serves one browser once: look at the terminal for the one that holds now.";
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
