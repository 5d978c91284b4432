// A small sound for phones that cannot buzz: a soft pluck, higher at the ten-line, two at the row's end.

const PLUCKS = { tap: [330], ten: [494], end: [494, 659], undo: [247] };
let audio;

function pluck(hertz, when) {
  const tone = audio.createOscillator();
  const loud = audio.createGain();
  tone.type = "triangle";
  tone.frequency.value = hertz;
  loud.gain.setValueAtTime(0.12, when);
  loud.gain.exponentialRampToValueAtTime(0.001, when + 0.09);
  tone.connect(loud).connect(audio.destination);
  tone.start(when);
  tone.stop(when + 0.1);
}

/** Sound what a tap did. */
export function play(kind) {
  audio ||= new AudioContext();
  if (audio.state === "suspended") audio.resume();
  PLUCKS[kind].forEach((hertz, i) => pluck(hertz, audio.currentTime + i * 0.11));
}
