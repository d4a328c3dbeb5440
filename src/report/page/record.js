// What was ticked as done, as a file of past boards: TOML, one table for each step.
(() => {
  const said = document.getElementById("record-said");
  // A string of JSON is one of TOML. Without signs that are no letters, and without halves of characters,
  // which no file can hold.
  const is_half = (sign) => sign.length === 1 && sign >= "\ud800" && sign <= "\udfff";
  const quoted = (text) => JSON.stringify(Array.from(text.replace(/[\u0000-\u001f\u007f-\u009f]/g, " "),
    (sign) => is_half(sign) ? "?" : sign).join(""));
  const number = (text) => {
    const found = /^\s*(-?\d+(?:[.,]\d+)?)\s*(?:g|%|°?\s*[FC])?\s*$/.exec(text);
    return found ? found[1].replace(",", ".") : null;
  };

  const wrong = [];
  const facts_of = (step) => {
    const lines = [];
    const field = (fact) => step.querySelector('[data-fact="' + fact + '"]');
    const refuse = (input, what) => {
      input.setAttribute("aria-invalid", "true");
      wrong.push([input, step.dataset.title + ": " + what]);
    };
    for (const input of step.querySelectorAll("input")) input.removeAttribute("aria-invalid");
    const coat = step.dataset.coat, word = step.dataset.step;
    if (coat) lines.push("name = " + quoted(coat));
    if (word !== "wet") lines.push("step = " + quoted(word));
    const date = field("date").value;
    if (date) lines.push("date = " + date); else refuse(field("date"), "the day is missing");
    const time = field("time").value;
    if (time) lines.push("time = " + quoted(time.slice(0, 5)));
    for (const fact of ["minutes", "air", "humidity", "mixed", "left"]) {
      const input = field(fact);
      if (!input || input.value.trim() === "") continue;
      const value = number(input.value);
      const whole = fact !== "minutes" || (/^\d+$/.test(value || "") && Number(value) > 0);
      if (value === null || !whole || (fact !== "air" && Number(value) < 0)) {
        refuse(input, fact + " is \"" + input.value + "\", a number is expected, such as " +
          { minutes: "25", air: "72", humidity: "55", mixed: "256", left: "8" }[fact]);
      } else if (fact === "minutes") {
        lines.push("minutes = " + Number(value));
      } else {
        lines.push(fact + " = " + quoted(value + " " + input.dataset.unit));
      }
    }
    const note = field("note").value.trim();
    if (note) lines.push("note = " + quoted(note));
    return "\n[[board.coat]]\n" + lines.join("\n") + "\n";
  };

  document.getElementById("download").addEventListener("click", () => {
    wrong.length = 0;
    const done = [...document.querySelectorAll("fieldset[data-step]")]
      .filter((step) => step.querySelector('[data-fact="done"]').checked).map(facts_of);
    if (wrong.length > 0) {
      said.textContent = wrong.map((one) => one[1]).join("; ") + ".";
      wrong[0][0].focus();
      return;
    }
    if (done.length === 0) {
      said.textContent = "Nothing is ticked as done yet.";
      return;
    }
    const text = "[[board]]\nname = " + quoted(document.body.dataset.job) + "\n" + done.join("");
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
    link.download = document.body.dataset.job + "-done.toml";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    said.textContent = (done.length === 1 ? "1 step" : done.length + " steps") + " in " + link.download + ".";
  });
})();
