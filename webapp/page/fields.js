/**
 * The fields of a request as the engine reads them. Made by build/field_names.py: not to be edited.
 * In a list a row's number stands where `Field` has one and `InRow` has ROW.
 *
 * @typedef {"units" |
 *   "person.weight" |
 *   "person.shoe_size.system" |
 *   "person.shoe_size.size" |
 *   "person.sex" |
 *   "person.height" |
 *   "person.age" |
 *   "person.child" |
 *   "foot.length" |
 *   "foot.again.length" |
 *   "foot.ball_girth" |
 *   "foot.again.ball_girth" |
 *   "foot.instep_girth" |
 *   "foot.again.instep_girth" |
 *   "foot.heel_girth" |
 *   "foot.again.heel_girth" |
 *   "foot.ankle_girth" |
 *   "foot.again.ankle_girth" |
 *   "foot.calf_girth" |
 *   "foot.again.calf_girth" |
 *   "other_foot.length" |
 *   "other_foot.again.length" |
 *   "other_foot.ball_girth" |
 *   "other_foot.again.ball_girth" |
 *   "other_foot.instep_girth" |
 *   "other_foot.again.instep_girth" |
 *   "other_foot.heel_girth" |
 *   "other_foot.again.heel_girth" |
 *   "other_foot.ankle_girth" |
 *   "other_foot.again.ankle_girth" |
 *   "other_foot.calf_girth" |
 *   "other_foot.again.calf_girth" |
 *   "foot.toe_breadth" |
 *   "other_foot.toe_breadth" |
 *   "cylinder.carrier" |
 *   "cylinder.spring" |
 *   "cylinder.thread" |
 *   "cylinder.ribber" |
 *   "cylinder.weights" |
 *   "cylinder.slots" |
 *   "knitter.stitches.scatter" |
 *   "knitter.stitches.weight" |
 *   "knitter.stitches.habit" |
 *   "knitter.stitches.habit_sd" |
 *   "knitter.rounds.scatter" |
 *   "knitter.rounds.weight" |
 *   "knitter.rounds.habit" |
 *   "knitter.rounds.habit_sd" |
 *   "knitter.pairs" |
 *   "knitter.left_out" |
 *   "fabric.yarn" |
 *   "fabric.along" |
 *   "fabric.strands" |
 *   "fabric.mark" |
 *   "fabric.swatch.needles" |
 *   "fabric.swatch.rounds" |
 *   "fabric.swatch.flat_width" |
 *   "fabric.swatch.length" |
 *   "fabric.swatch.pulled_width" |
 *   "fabric.swatch.unwashed_width" |
 *   "fabric.swatch.unwashed_length" |
 *   "fabric.swatch.grams" |
 *   "fabric.swatch.mark" |
 *   "fabric.swatch.hung" |
 *   "fabric.stitches" |
 *   "fabric.rounds" |
 *   "fabric.hung" |
 *   "sock.length_ease" |
 *   "sock.foot_length_of_sock" |
 *   "sock.growing_room" |
 *   "sock.cuff.kind" |
 *   "sock.cuff.rounds" |
 *   "sock.cuff.every" |
 *   "sock.cuff.change_after" |
 *   "sock.cuff.change_every" |
 *   "sock.cuff.flat_width" |
 *   "sock.cuff.pulled_width" |
 *   "sock.closeness" |
 *   "sock.leg.kind" |
 *   "sock.leg.rounds" |
 *   "sock.leg.height" |
 *   "sock.leg.plain" |
 *   "sock.heel.kind" |
 *   "sock.heel.flap" |
 *   "sock.heel.needles" |
 *   "sock.heel.left" |
 *   "sock.toe.plain" |
 *   "sock.toe.kind" |
 *   "sock.toe.needles" |
 *   "sock.toe.left" |
 *   "sock.end.rounds" |
 *   "sock.string" |
 *   "sock.colors.cuff" |
 *   "sock.colors.heel" |
 *   "sock.colors.toe" |
 *   "sock.colors.leg" |
 *   "sock.colors.foot" |
 *   "first_sock.like" |
 *   "first_sock.foot_rounds" |
 *   "first_sock.length" |
 *   "first_sock.unwashed_length" |
 *   "first_sock.flat_width" |
 *   "stock.margin" |
 *   "stock.apart" |
 *   "stock.ball" |
 *   "stock.left" |
 *   "stock.sock_one" |
 *   "stock.repeat" |
 *   "stock.repeat_rounds" |
 *   "origin.title" |
 *   "origin.maker" |
 *   "origin.version" |
 *   "origin.slots" |
 *   `fabric.swatches.${number}.kind` |
 *   `fabric.swatches.${number}.needles` |
 *   `fabric.swatches.${number}.rounds` |
 *   `fabric.swatches.${number}.flat_width` |
 *   `fabric.swatches.${number}.length` |
 *   `fabric.swatches.${number}.pulled_width` |
 *   `fabric.swatches.${number}.unwashed_width` |
 *   `fabric.swatches.${number}.unwashed_length` |
 *   `fabric.swatches.${number}.grams` |
 *   `fabric.swatches.${number}.mark` |
 *   `fabric.swatches.${number}.hung` |
 *   `fabric.swatches.${number}.whole_stitches` |
 *   `sock.leg.girths.${number}.height` |
 *   `sock.leg.girths.${number}.girth` |
 *   `sock.leg.bands.${number}.rounds` |
 *   `sock.leg.bands.${number}.mark` |
 *   `sock.leg.bands.${number}.stitches`} Field
 *
 * @typedef {"fabric.swatches.ROW.kind" |
 *   "fabric.swatches.ROW.needles" |
 *   "fabric.swatches.ROW.rounds" |
 *   "fabric.swatches.ROW.flat_width" |
 *   "fabric.swatches.ROW.length" |
 *   "fabric.swatches.ROW.pulled_width" |
 *   "fabric.swatches.ROW.unwashed_width" |
 *   "fabric.swatches.ROW.unwashed_length" |
 *   "fabric.swatches.ROW.grams" |
 *   "fabric.swatches.ROW.mark" |
 *   "fabric.swatches.ROW.hung" |
 *   "fabric.swatches.ROW.whole_stitches" |
 *   "sock.leg.girths.ROW.height" |
 *   "sock.leg.girths.ROW.girth" |
 *   "sock.leg.bands.ROW.rounds" |
 *   "sock.leg.bands.ROW.mark" |
 *   "sock.leg.bands.ROW.stitches"} InRow
 *
 * @typedef {"person" |
 *   "person.shoe_size" |
 *   "foot" |
 *   "foot.again" |
 *   "other_foot" |
 *   "other_foot.again" |
 *   "cylinder" |
 *   "knitter" |
 *   "knitter.stitches" |
 *   "knitter.rounds" |
 *   "fabric" |
 *   "fabric.swatch" |
 *   "fabric.swatches" |
 *   "sock" |
 *   "sock.cuff" |
 *   "sock.leg" |
 *   "sock.leg.girths" |
 *   "sock.leg.bands" |
 *   "sock.heel" |
 *   "sock.toe" |
 *   "sock.end" |
 *   "sock.colors" |
 *   "first_sock" |
 *   "stock" |
 *   "origin"} Group
 *
 */

/** What the engine reads back while it is typed. @type {Field[]} */
export const ECHOED = [
  "person.height",
  "foot.length",
  "foot.again.length",
  "foot.ball_girth",
  "foot.again.ball_girth",
  "foot.instep_girth",
  "foot.again.instep_girth",
  "foot.heel_girth",
  "foot.again.heel_girth",
  "foot.ankle_girth",
  "foot.again.ankle_girth",
  "foot.calf_girth",
  "foot.again.calf_girth",
  "other_foot.length",
  "other_foot.again.length",
  "other_foot.ball_girth",
  "other_foot.again.ball_girth",
  "other_foot.instep_girth",
  "other_foot.again.instep_girth",
  "other_foot.heel_girth",
  "other_foot.again.heel_girth",
  "other_foot.ankle_girth",
  "other_foot.again.ankle_girth",
  "other_foot.calf_girth",
  "other_foot.again.calf_girth",
  "foot.toe_breadth",
  "other_foot.toe_breadth",
  "fabric.swatch.flat_width",
  "fabric.swatch.length",
  "fabric.swatch.pulled_width",
  "fabric.swatch.unwashed_width",
  "fabric.swatch.unwashed_length",
  "fabric.swatch.grams",
  "fabric.swatch.hung",
  "sock.foot_length_of_sock",
  "sock.cuff.flat_width",
  "sock.cuff.pulled_width",
  "sock.leg.height",
  "first_sock.length",
  "first_sock.unwashed_length",
  "first_sock.flat_width",
  "stock.ball",
  "stock.left",
  "stock.sock_one",
  "stock.repeat",
];

/** Weights of yarn. @type {(Field | InRow)[]} */
export const WEIGHTS = [
  "fabric.swatch.grams",
  "fabric.swatch.hung",
  "fabric.swatches.ROW.grams",
  "fabric.swatches.ROW.hung",
  "fabric.hung",
  "stock.ball",
  "stock.left",
  "stock.sock_one",
];

/** One of a few. @type {(Field | InRow)[]} */
export const CHOICES = [
  "units",
  "person.shoe_size.system",
  "person.sex",
  "cylinder.carrier",
  "cylinder.spring",
  "cylinder.thread",
  "cylinder.ribber",
  "cylinder.weights",
  "fabric.swatches.ROW.kind",
  "sock.cuff.kind",
  "sock.closeness",
  "sock.leg.kind",
  "sock.heel.kind",
  "sock.toe.kind",
  "sock.string",
  "first_sock.like",
];
