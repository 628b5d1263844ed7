// The browser comes from the system or from @sparticuz/chromium; puppeteer must never download one of its own.
module.exports = { skipDownload: true };
