fetch("https://example.org/");
const end = "</script>";
