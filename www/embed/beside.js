// What helpers beside a calculator start from.

import { serve } from "../worker.js";

serve();
