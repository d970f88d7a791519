import { el, show } from "../frame/dom.js";

const jobs = await (await fetch("/jobs")).json();
show(document.getElementById("jobs"), jobs.map((job) => el("li", {}, el("a", { href: job.address }, job.name))));
