/**
 * A sock drawn as far as it is knitted, from its courses as the engine gives them: what is knitted is the
 * cloth between a piece's first course and the one that was cranked last.
 * @import {Drawing} from "../page/answers"
 */

/** A course: the six numbers of a quadratic curve. @typedef {number[]} Course */

/** @param {Course[]} courses @param {number} share @returns {Course[]} as far as a share of them */
function upto(courses, share) {
  const at = share * (courses.length - 1);
  const whole = Math.floor(at);
  const [here, next] = [courses[whole], courses[whole + 1]];
  if (!next || at === whole) return courses.slice(0, whole + 1);
  const last = here.map((from, i) => from + (next[i] - from) * (at - whole));
  return [...courses.slice(0, whole + 1), last];
}

/** The way past corners to the last of them, rounded. @param {number[][]} corners */
function past(corners) {
  if (corners.length < 2) return "";
  if (corners.length === 2) return `L${corners[1]}`;
  return corners
    .slice(1, -1)
    .map(([x, y], i) => {
      const [to, down] = corners[i + 2];
      const end = i === corners.length - 3 ? [to, down] : [(x + to) / 2, (y + down) / 2];
      return `Q${x} ${y} ${end}`;
    })
    .join("");
}

/** The cloth between the first of some courses and the last. @param {Course[]} courses */
function area(courses) {
  const [x, y, bend, down, to, end] = courses[0];
  const last = courses[courses.length - 1];
  const ends = past(courses.map((course) => course.slice(4)));
  const back = past(courses.map((course) => course.slice(0, 2)).reverse());
  return `M${x} ${y}Q${bend} ${down} ${to} ${end}${ends}Q${last[2]} ${last[3]} ${last[0]} ${last[1]}${back}Z`;
}

/**
 * @param {Drawing} drawing @param {Record<string, number>} rows how many are knitted of each part
 * @returns {{ part: string, dashes: boolean, whole: string, knitted: string }[]} the paths of each piece, and that
 *   of what is knitted of it, "" for nothing
 */
export function pieces({ cloth }, rows) {
  const left = { ...rows };
  return cloth.map(({ part, rows: all, dashes, courses }) => {
    const done = Math.min(left[part] ?? 0, all);
    left[part] = (left[part] ?? 0) - done;
    const knitted = done ? area(upto(courses, done / all)) : "";
    return { part, dashes, whole: area(courses), knitted };
  });
}

/** The course that was cranked last. @param {Drawing} drawing @param {Record<string, number>} rows */
export function newest({ cloth }, rows) {
  const left = { ...rows };
  let now = "";
  for (const { part, rows: all, courses } of cloth) {
    const done = Math.min(left[part] ?? 0, all);
    left[part] = (left[part] ?? 0) - done;
    if (!done) continue;
    const [x, y, bend, down, to, end] = upto(courses, done / all).slice(-1)[0];
    now = `M${x} ${y}Q${bend} ${down} ${to} ${end}`;
  }
  return now;
}

/** All of it that is worn, as one path. @param {Drawing} drawing */
export function outline({ cloth }) {
  return cloth
    .filter(({ part }) => !["waste", "between", "finish"].includes(part))
    .map(({ courses }) => area(courses))
    .join("");
}
