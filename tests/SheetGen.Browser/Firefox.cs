using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SheetGen.Browser;

/// <summary>
/// Debian's firefox-esr without a screen. No driver of it is packaged, so it is spoken to over its own port by WebDriver BiDi (W3C working draft): sessions, navigation,
/// scripts, and what it logs and asks for.
/// </summary>
public sealed class Firefox : IDisposable
{
    private const string Program = "/usr/bin/firefox-esr";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);
    private readonly DirectoryInfo _profile = Directory.CreateTempSubdirectory("sheetgen-firefox-");
    private readonly Process _process;
    private readonly ClientWebSocket _socket = new();
    private readonly string _context;
    private int _number;

    public Firefox()
    {
        Browser.Need(Program);
        var info = new ProcessStartInfo(Program) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (string argument in new[] { "--headless", "--no-remote", "--profile", _profile.FullName, "--remote-debugging-port", "0", "about:blank" })
            info.ArgumentList.Add(argument);
        info.Environment["HOME"] = _profile.FullName;
        _process = Process.Start(info)!;
        var address = new TaskCompletionSource<string>();
        _process.ErrorDataReceived += (_, line) =>
        {
            const string Listening = "WebDriver BiDi listening on ";
            if (line.Data?.IndexOf(Listening, StringComparison.Ordinal) is >= 0 and int at)
                address.TrySetResult(line.Data[(at + Listening.Length)..].Trim());
        };
        _process.OutputDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        if (!address.Task.Wait(Patience))
            throw new TimeoutException("firefox-esr does not listen");
        _socket.ConnectAsync(new Uri(address.Task.Result + "/session"), CancellationToken.None).Wait(Patience);
        Ask("session.new", new() { ["capabilities"] = new JsonObject() });
        Ask("session.subscribe", new() { ["events"] = new JsonArray("log.entryAdded", "network.beforeRequestSent") });
        _context = Ask("browsingContext.getTree", []).GetProperty("contexts")[0].GetProperty("context").GetString()!;
    }

    /// <summary>Errors and warnings of the console.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Addresses asked for.</summary>
    public List<string> Requests { get; } = [];

    public void OpenFile(string path)
    {
        Ask("browsingContext.navigate", new() { ["context"] = _context, ["url"] = new Uri(path).AbsoluteUri, ["wait"] = "complete" });
        for (int i = 0; i < 600 && !Run("return globalThis.sheetgenReview !== undefined").GetBoolean(); i++)
            Thread.Sleep(100);
    }

    public void Size(int width, int height) =>
        Ask("browsingContext.setViewport", new() { ["context"] = _context, ["viewport"] = new JsonObject { ["width"] = width, ["height"] = height } });

    /// <summary>Runs a script, which may wait; what it returns comes back as JSON.</summary>
    public JsonElement Run(string script)
    {
        JsonElement answer = Ask("script.evaluate", new()
        {
            ["expression"] = "(async () => { const value = await (async () => { " + script + " })(); return JSON.stringify(value === undefined ? null : value); })()",
            ["target"] = new JsonObject { ["context"] = _context },
            ["awaitPromise"] = true,
        });
        return answer.GetProperty("type").GetString() == "success"
            ? JsonDocument.Parse(answer.GetProperty("result").GetProperty("value").GetString()!).RootElement
            : throw new InvalidOperationException(answer.GetProperty("exceptionDetails").GetProperty("text").GetString());
    }

    public byte[] Picture() => Convert.FromBase64String(Ask("browsingContext.captureScreenshot", new() { ["context"] = _context }).GetProperty("data").GetString()!);

    private JsonElement Ask(string method, JsonObject parameters)
    {
        int number = ++_number;
        byte[] question = Encoding.UTF8.GetBytes(new JsonObject { ["id"] = number, ["method"] = method, ["params"] = parameters }.ToJsonString());
        using var time = new CancellationTokenSource(Patience);
        _socket.SendAsync(question, WebSocketMessageType.Text, true, time.Token).GetAwaiter().GetResult();
        while (true)
        {
            JsonElement message = Next(time.Token);
            if (!message.TryGetProperty("id", out JsonElement id) || id.ValueKind != JsonValueKind.Number)
            {
                Note(message);
                continue;
            }
            if (id.GetInt32() != number)
                continue;
            return message.GetProperty("type").GetString() == "success"
                ? message.GetProperty("result")
                : throw new InvalidOperationException($"{method}: {message}");
        }
    }

    private void Note(JsonElement message)
    {
        if (!message.TryGetProperty("method", out JsonElement method))
            return;
        JsonElement about = message.GetProperty("params");
        if (method.GetString() == "network.beforeRequestSent")
            Requests.Add(about.GetProperty("request").GetProperty("url").GetString()!);
        else if (about.GetProperty("level").GetString() is "error" or "warn")
            Complaints.Add(about.GetProperty("text").GetString() ?? "");
    }

    private JsonElement Next(CancellationToken end)
    {
        using var text = new MemoryStream();
        byte[] part = new byte[1 << 16];
        WebSocketReceiveResult result;
        do
        {
            result = _socket.ReceiveAsync(part, end).GetAwaiter().GetResult();
            text.Write(part, 0, result.Count);
        }
        while (!result.EndOfMessage);
        return JsonDocument.Parse(text.ToArray()).RootElement;
    }

    public void Dispose()
    {
        _socket.Dispose();
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
        try
        {
            _profile.Delete(recursive: true);
        }
        catch (IOException)
        {
            // A child may write for a moment yet; the folder is the system's to clean then.
        }
    }
}
