// A cup's deadline is a time of the clock: when it was mixed and how long it may be used. What is left is
// that less now, each time anew, so that neither a dark screen nor a reload makes it wrong.
const clocks = (() => {
  const two = (n) => String(n).padStart(2, "0");
  const wall = (ms) => { const t = new Date(ms); return two(t.getHours()) + ":" + two(t.getMinutes()); };
  const length = (ms) => {
    const s = Math.max(0, Math.ceil(ms / 1000));
    const h = Math.floor(s / 3600), m = Math.floor(s / 60) % 60;
    return (h > 0 ? h + ":" + two(m) : m) + ":" + two(s % 60);
  };
  const day = 24 * 3600 * 1000;
  const warn_ms = 5 * 60 * 1000, sound_for_ms = 2 * 60 * 1000, sound_every_ms = 4000;

  // A browser lets a page sound only after it was touched.
  let audio = null;
  const touch = () => {
    try {
      audio = audio || new AudioContext();
      if (audio.state === "suspended") audio.resume();
    } catch { audio = null; }
  };
  document.addEventListener("pointerdown", touch);
  document.addEventListener("keydown", touch);
  const sound = (times) => {
    if (!audio || audio.state !== "running") return;
    for (let i = 0; i < times; ++i) {
      const tone = audio.createOscillator(), volume = audio.createGain();
      const at = audio.currentTime + 0.35 * i;
      tone.frequency.value = 880;
      volume.gain.setValueAtTime(0.4, at);
      volume.gain.setValueAtTime(0, at + 0.2);
      tone.connect(volume).connect(audio.destination);
      tone.start(at);
      tone.stop(at + 0.25);
    }
  };

  const cups = [...document.querySelectorAll(".cup")].map((box) => {
    const say = box.querySelector(".say"), deadline = box.querySelector(".deadline");
    const rest = box.querySelector(".rest"), alarm = box.querySelector(".alarm");
    const mixed = box.querySelector(".mixed"), can_sound = box.querySelector(".sound");
    const start = box.querySelector(".start"), stop = box.querySelector(".stop");
    const mixed_at = box.querySelector(".mixed-at");
    const printed = [say.textContent, deadline.textContent, mixed.textContent];
    const name = "cup " + box.dataset.cup, use_ms = 1000 * Number(box.dataset.useS);
    let warned = false, sounded = 0;
    const put = (element, text) => { if (element.textContent !== text) element.textContent = text; };

    const show = () => {
      const begun = kept.get(name);
      stop.hidden = begun === undefined;
      const silent = !audio || audio.state !== "running";
      put(can_sound, begun === undefined ? "" : silent
        ? "No sound yet: touch the page once, and keep it open with the screen on."
        : "Sounds as long as this page is open and the screen is on.");
      if (begun === undefined) {
        put(say, printed[0]); put(deadline, printed[1]); put(mixed, printed[2]); put(rest, ""); put(alarm, "");
        box.classList.remove("over");
        return;
      }
      const end = begun + use_ms, left = end - Date.now();
      put(say, "use before");
      put(deadline, wall(end));
      put(mixed, "mixed at " + wall(begun));
      box.classList.toggle("over", left <= 0);
      if (left > 0) {
        put(rest, length(left) + " left");
        put(alarm, left <= warn_ms ? "Last minutes: spread what is in the cup." : "");
        if (left <= warn_ms && left < use_ms / 2 && !warned) { warned = true; sound(2); }
        return;
      }
      put(rest, "over since " + length(-left));
      put(alarm, "TIME IS UP: use no more of this cup. If it is warm, carry it outside onto something that "
        + "cannot burn.");
      if (-left < sound_for_ms && Date.now() - sounded >= sound_every_ms) {
        sounded = Date.now();
        sound(4);
      }
    };
    const begin = (ms) => { warned = false; sounded = 0; kept.put(name, ms); show(); };
    start.addEventListener("click", () => { mixed_at.value = wall(Date.now()); begin(Date.now()); });
    stop.addEventListener("click", () => { mixed_at.value = ""; kept.put(name, undefined); show(); start.focus(); });
    mixed_at.addEventListener("change", () => {
      const typed = /^(\d\d):(\d\d)/.exec(mixed_at.value);
      if (!typed) return;
      const at = new Date();
      at.setHours(Number(typed[1]), Number(typed[2]), 0, 0);
      // The latest such time that is past.
      begin(at.getTime() > Date.now() ? at.getTime() - day : at.getTime());
    });
    if (kept.get(name) !== undefined) mixed_at.value = wall(kept.get(name));
    show();
    return show;
  });
  const all = () => { for (const show of cups) show(); };
  setInterval(all, 250);
  document.addEventListener("visibilitychange", all);
  window.addEventListener("pageshow", all);
  window.addEventListener("storage", all);
  return all;
})();
