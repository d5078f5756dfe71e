// The page's own way from a knitted pair to what stays of it, for tests that fill a phone.

import { endedFrom } from "../../webapp/machine/ended.js";
import { toValues } from "../../webapp/page/request.js";

globalThis.bench = { endedFrom, toValues };
