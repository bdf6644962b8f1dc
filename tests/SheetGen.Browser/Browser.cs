using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;
using OpenQA.Selenium;
using OpenQA.Selenium.Chrome;
using Xunit;

namespace SheetGen.Browser;

/// <summary>
/// Debian's chromium without a screen, WebGL on the processor. Where it is missing a test is skipped with a message; with CI=true in the environment it fails.
/// </summary>
public sealed class Browser : IDisposable
{
    private const string Driver = "/usr/bin/chromedriver", Program = "/usr/bin/chromium";
    private readonly ChromeDriver _driver;

    public Browser()
    {
        Need(Program);
        Need(Driver);
        var options = new ChromeOptions { BinaryLocation = Program };
        options.AddArguments("--headless=new", "--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--window-size=1400,1000", "--force-device-scale-factor=1");
        options.SetLoggingPreference(LogType.Browser, LogLevel.All);
        options.SetLoggingPreference("performance", LogLevel.All);
        ChromeDriverService service = ChromeDriverService.CreateDefaultService(Path.GetDirectoryName(Driver), Path.GetFileName(Driver));
        service.SuppressInitialDiagnosticInformation = true;
        _driver = new ChromeDriver(service, options, TimeSpan.FromMinutes(3));
        _driver.Manage().Timeouts().AsynchronousJavaScript = TimeSpan.FromMinutes(3);
        Cdp("Network.enable", []);
    }

    /// <summary>Fails or skips where a file is missing.</summary>
    public static void Need(string file)
    {
        if (File.Exists(file))
            return;
        if (Environment.GetEnvironmentVariable("CI") == "true")
            Assert.Fail(file + " is not installed");
        Assert.Skip(file + " is not installed");
    }

    /// <summary>The root of the source tree.</summary>
    public static string Root([CallerFilePath] string file = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(file)!, "..", ".."));

    public void Open(string address)
    {
        _driver.Navigate().GoToUrl(address);
        Wait("return globalThis.sheetgenReview !== undefined");
    }

    public void OpenFile(string path) => Open(new Uri(path).AbsoluteUri);

    public void Size(int width, int height) => Cdp("Emulation.setDeviceMetricsOverride", new() { ["width"] = width, ["height"] = height, ["deviceScaleFactor"] = 1, ["mobile"] = false });

    public object? Cdp(string command, Dictionary<string, object?> parameters) => _driver.ExecuteCdpCommand(command, parameters);

    /// <summary>Processor seconds of the page's main thread by task (TaskDuration, ScriptDuration, LayoutDuration ...) since it was opened, once asked for by <see cref="CountProcessorTime"/>.</summary>
    public IReadOnlyDictionary<string, double> ProcessorTime()
    {
        var answer = (Dictionary<string, object?>)Cdp("Performance.getMetrics", [])!;
        return ((IEnumerable<object>)answer["metrics"]!).Cast<Dictionary<string, object>>().ToDictionary(m => (string)m["name"], m => Convert.ToDouble(m["value"], CultureInfo.InvariantCulture));
    }

    public void CountProcessorTime() => Cdp("Performance.enable", new() { ["timeDomain"] = "threadTicks" });

    /// <summary>Runs a script; what it returns comes back as JSON.</summary>
    public JsonElement Run(string script, params object[] arguments)
    {
        object? text = _driver.ExecuteScript("const value = (function() { " + script + " }).apply(null, arguments); return JSON.stringify(value === undefined ? null : value);", arguments);
        return JsonDocument.Parse((string)text!).RootElement;
    }

    /// <summary>Runs a script that calls its last argument when it is done.</summary>
    public JsonElement RunAsync(string script)
    {
        object? text = _driver.ExecuteAsyncScript("const done = value => arguments[arguments.length - 1](JSON.stringify(value)); " + script);
        return JsonDocument.Parse((string)text!).RootElement;
    }

    public void Wait(string script)
    {
        for (int i = 0; i < 600; i++)
        {
            if (_driver.ExecuteScript(script) is true)
                return;
            Thread.Sleep(100);
        }
        Assert.Fail("never true: " + script);
    }

    public void Click(double x, double y) => new OpenQA.Selenium.Interactions.Actions(_driver)
        .MoveToLocation((int)Math.Round(x, MidpointRounding.AwayFromZero), (int)Math.Round(y, MidpointRounding.AwayFromZero)).Click().Perform();

    public void Keys(string keys) => new OpenQA.Selenium.Interactions.Actions(_driver).SendKeys(keys).Perform();

    public IWebElement Find(string css) => _driver.FindElement(By.CssSelector(css));

    public byte[] Picture(string css) => ((ITakesScreenshot)Find(css)).GetScreenshot().AsByteArray;

    public byte[] Pdf() => _driver.Print(new PrintOptions()).AsByteArray;

    /// <summary>Messages of the console since the last call, warnings and errors.</summary>
    public IReadOnlyList<string> Complaints() =>
        [.. _driver.Manage().Logs.GetLog(LogType.Browser).Where(e => e.Level >= LogLevel.Warning && !e.Message.Contains("GPU stall due to ReadPixels", StringComparison.Ordinal)).Select(e => e.Message)];

    /// <summary>Addresses asked for since the last call.</summary>
    public IReadOnlyList<string> Requests()
    {
        var addresses = new List<string>();
        foreach (LogEntry entry in _driver.Manage().Logs.GetLog("performance"))
        {
            JsonElement message = JsonDocument.Parse(entry.Message).RootElement.GetProperty("message");
            if (message.GetProperty("method").GetString() is "Network.requestWillBeSent" or "Network.webSocketCreated")
                addresses.Add(message.GetProperty("params").TryGetProperty("request", out JsonElement request) ? request.GetProperty("url").GetString()! : "web socket");
        }
        return addresses;
    }

    public void Dispose() => _driver.Dispose();

    public static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
