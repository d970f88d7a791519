import { el, show } from "../frame/dom.js";

const jobs = await (await fetch("/jobs")).json();
show(document.getElementById("jobs"), jobs.map((job) => el("li", {}, el("a", { href: job.address }, job.name))));
if (jobs.length === 0) {
  show(document.getElementById("offered"), "No job lies in this folder yet, nor in a folder of it.");
}

// Only where the folder was opened, and not one job by its name.
if ((await fetch("/new")).ok) {
  show(document.getElementById("new"), el("a", { class: "new", href: "/new" }, "A new hull, from its table of offsets"));
}
