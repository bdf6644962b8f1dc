using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SheetGen.Cli.Watching;

/// <summary>
/// Serves a watched wall's page to this machine alone: on the loopback address, a port that the system chooses, and a path with a secret that only
/// the address printed here tells. It answers GET for the page and for what is new; nothing else, and no file.
/// </summary>
public sealed class WatchServer : IDisposable
{
    private const int MostHead = 16 * 1024;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private readonly WatchedWall _wall;
    private readonly string _secret = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
    private readonly int _port;

    public WatchServer(WatchedWall wall)
    {
        _wall = wall;
        _listener.Start();
        _port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _ = Accept();
    }

    /// <summary>Where the page is, secret included.</summary>
    public string Address => FormattableString.Invariant($"http://127.0.0.1:{_port}/{_secret}/");

    public void Dispose()
    {
        _end.Cancel();
        _listener.Dispose();
        _end.Dispose();
    }

    private async Task Accept()
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                TcpClient client = await _listener.AcceptTcpClientAsync(_end.Token);
                _ = Answer(client);
            }
            catch (Exception e) when (e is SocketException or OperationCanceledException or ObjectDisposedException)
            {
                // A connection that broke before it stood is the other side's affair.
            }
        }
    }

    private async Task Answer(TcpClient client)
    {
        try
        {
            using (client)
            {
                using NetworkStream stream = client.GetStream();
                using var patience = CancellationTokenSource.CreateLinkedTokenSource(_end.Token);
                patience.CancelAfter(Patience * 2);
                if (await Head(stream, patience.Token) is not { } head)
                    return;
                (string status, string type, byte[] body) = await Respond(head, patience.Token);
                string start = FormattableString.Invariant($"HTTP/1.1 {status}\r\nContent-Type: {type}; charset=utf-8\r\nContent-Length: {body.Length}\r\n")
                    + "Cache-Control: no-store\r\nX-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\nX-Frame-Options: DENY\r\nConnection: close\r\n\r\n";
                await stream.WriteAsync(Encoding.ASCII.GetBytes(start), patience.Token);
                await stream.WriteAsync(body, patience.Token);
            }
        }
        catch (Exception e) when (e is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
            // The browser went away; there is nobody to tell.
        }
    }

    /// <summary>The request's head up to its empty line; null where the other side sends none, or one without end.</summary>
    private static async Task<string[]?> Head(NetworkStream stream, CancellationToken cancel)
    {
        var head = new byte[MostHead];
        int length = 0;
        while (length < MostHead)
        {
            int read = await stream.ReadAsync(head.AsMemory(length), cancel);
            if (read == 0)
                return null;
            length += read;
            string text = Encoding.Latin1.GetString(head, 0, length);
            int end = text.IndexOf("\r\n\r\n", StringComparison.Ordinal);
            if (end >= 0)
                return text[..end].Split("\r\n");
        }
        return null;
    }

    private async Task<(string Status, string Type, byte[] Body)> Respond(string[] head, CancellationToken cancel)
    {
        (string, string, byte[]) refused = ("404 Not Found", "text/plain", "nothing here"u8.ToArray());
        string[] request = head[0].Split(' ');
        // A page of another site can reach this port, but only under its own host name (DNS rebinding), and it does not know the secret.
        string[] hosts = [.. head.Skip(1).Where(l => l.StartsWith("host:", StringComparison.OrdinalIgnoreCase)).Select(l => l[5..].Trim())];
        if (request.Length != 3 || request[0] != "GET" || hosts.Length != 1 || hosts[0] != FormattableString.Invariant($"127.0.0.1:{_port}"))
            return refused;
        string page = $"/{_secret}/", news = page + "news?after=";
        if (Same(request[1], page))
            return ("200 OK", "text/html", _wall.Now.Page ?? Waiting());
        if (request[1].Length > news.Length && Same(request[1][..news.Length], news) && int.TryParse(request[1][news.Length..], out int after))
            return ("200 OK", "application/json", await News(after, cancel));
        return refused;
    }

    private static bool Same(string asked, string own) => CryptographicOperations.FixedTimeEquals(Encoding.Latin1.GetBytes(asked), Encoding.Latin1.GetBytes(own));

    /// <summary>What there is, as soon as it is newer than what the page knows, or after a while.</summary>
    private async Task<byte[]> News(int after, CancellationToken cancel)
    {
        for (TimeSpan waited = TimeSpan.Zero; _wall.Now.Version <= after && waited < Patience; waited += TimeSpan.FromMilliseconds(100))
            await Task.Delay(100, cancel);
        WatchedWall.Snapshot now = _wall.Now;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("version", now.Version);
            json.WriteNumber("page", now.PageNumber);
            json.WriteBoolean("building", now.Building);
            json.WriteStartArray("faults");
            foreach (string fault in now.Faults)
                json.WriteStringValue(fault);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    /// <summary>Before there is any page: what is wrong, asked for anew each second.</summary>
    private byte[] Waiting()
    {
        WatchedWall.Snapshot now = _wall.Now;
        string text = now.Faults.Count == 0 ? "The wall is being built ..." : string.Join('\n', now.Faults);
        return Encoding.UTF8.GetBytes($"""
            <!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'">
            <meta http-equiv="refresh" content="1"><title>Review</title></head><body><h1>No wall to show yet</h1><pre>{HtmlEncoder.Default.Encode(text)}</pre></body></html>
            """);
    }
}
