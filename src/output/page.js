// Tables that can be sorted: a button in each heading that says how. Without this script they stand in ranked order.
(() => {
  "use strict";
  for (const table of document.querySelectorAll("table[data-sortable]")) {
    const body = table.tBodies[0];
    const ranked = [...body.rows];
    const status = table.nextElementSibling;
    const heads = [...table.tHead.rows[0].cells];
    const key = (row, column, sorts) => {
      const cell = row.cells[column];
      if (sorts === "text") return cell.textContent.trim();
      return "by" in cell.dataset ? Number(cell.dataset.by) : null;
    };
    const sort = (head, column) => {
      const rising = head.getAttribute("aria-sort") !== "ascending";
      for (const other of heads) other.removeAttribute("aria-sort");
      head.setAttribute("aria-sort", rising ? "ascending" : "descending");
      const sorts = head.dataset.sorts;
      const order = (a, b) => {
        const x = key(a, column, sorts);
        const y = key(b, column, sorts);
        if (x === null || y === null) return (x === null) - (y === null);  // what is not known stays last
        const less = sorts === "text" ? x.localeCompare(y, document.documentElement.lang) : x - y;
        return rising ? less : -less;
      };
      body.append(...[...ranked].sort(order));
      status.textContent = table.dataset.sorted
        .replace("{column}", head.textContent.trim().replaceAll("\u00AD", ""))
        .replace("{way}", rising ? table.dataset.rising : table.dataset.falling);
    };
    heads.forEach((head, column) => {
      if (!head.dataset.sorts) return;
      const button = document.createElement("button");
      button.type = "button";
      button.append(...head.childNodes);
      button.addEventListener("click", () => sort(head, column));
      head.append(button);
    });
    table.dataset.ready = "";
  }
})();
