// Run by node with the folder of modules and the name of a check: reads JSON from standard input, writes JSON.
"use strict";
const { readFileSync } = require("fs");
const [modules, check] = process.argv.slice(2);
const given = JSON.parse(readFileSync(0, "utf8"));

const checks = {
  // The HTML standard and what keeps a page open to all, with no rule left out. One line for each fault.
  async html({ text }) {
    const { HtmlValidate, StaticConfigLoader } = require(`${modules}/html-validate`);
    const loader = new StaticConfigLoader({ extends: ["html-validate:standard", "html-validate:a11y"] });
    const report = await new HtmlValidate(loader).validateString(text);
    return report.results.flatMap((result) =>
      result.messages.map((each) => `${each.line}:${each.column}: ${each.ruleId}: ${each.message}`)
    );
  },
  // Errors and warnings; what is only information is left out.
  async glb({ glbs }) {
    const { validateBytes } = require(`${modules}/gltf-validator`);
    const found = [];
    for (const [name, base64] of Object.entries(glbs)) {
      const report = await validateBytes(new Uint8Array(Buffer.from(base64, "base64")), { maxIssues: 100 });
      for (const { severity, code, message, pointer } of report.issues.messages)
        if (severity <= 1) found.push(`${name}: ${code}: ${message} ${pointer || ""}`);
    }
    return found;
  },
};

checks[check](given).then((found) => process.stdout.write(JSON.stringify(found)));
