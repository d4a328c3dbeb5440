"use strict";
// What is typed and started is kept in this browser, under the job and the revision of its plan.
const kept = (() => {
  const key = "wetout job sheet " + document.body.dataset.sheet;
  let memory = {};
  let lasting = true;
  const read = () => {
    if (!lasting) return memory;
    try {
      memory = JSON.parse(localStorage.getItem(key) || "{}") || {};
    } catch (error) {
      // What cannot be read is begun anew; a browser that keeps nothing is said below.
      if (!(error instanceof SyntaxError)) lasting = false;
    }
    return memory;
  };
  const told = () => { document.getElementById("not-kept").hidden = lasting; };
  return {
    get: (name) => read()[name],
    put: (name, value) => {
      // Read first: the same sheet may be open twice.
      const all = read();
      if (value === undefined || value === "") delete all[name]; else all[name] = value;
      memory = all;
      try { localStorage.setItem(key, JSON.stringify(all)); } catch { lasting = false; }
      told();
    },
    told,
  };
})();
kept.get("");
kept.told();

// Every field comes back as it was left.
for (const input of document.querySelectorAll("input[name]")) {
  const box = input.type === "checkbox";
  const before = kept.get(input.name);
  if (before !== undefined) {
    if (box) input.checked = before === true; else input.value = before === "-" ? "" : before;
  }
  // Dates and times that are empty print as a line to write on.
  const look = () => input.classList.toggle("filled", !box && input.value !== "");
  const keep = () => {
    const usual = input.defaultValue !== "" && input.value === "" ? "-" : input.value;
    kept.put(input.name, box ? input.checked || undefined : usual);
    look();
  };
  input.addEventListener("input", keep);
  input.addEventListener("change", keep);
  look();
}
