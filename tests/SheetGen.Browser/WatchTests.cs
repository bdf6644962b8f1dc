using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using SheetGen.Cli;
using SheetGen.Cli.Watching;
using Xunit;

namespace SheetGen.Browser;

/// <summary>A watched project file: the page follows each save, shows faults, and nothing else is served.</summary>
public sealed class WatchTests : IDisposable
{
    private readonly Walls _walls = new();
    private readonly Screen _screen = new(TextWriter.Null, TextWriter.Null, live: false);

    private string Save(string yaml)
    {
        string file = Path.Combine(_walls.Folder, "wall.yaml");
        File.WriteAllText(file, yaml);
        return file;
    }

    [Fact]
    [Trait("Category", "Outside")]
    public async Task The_open_page_follows_the_file_and_shows_its_faults()
    {
        var wall = new WatchedWall(Save("format: 1\n"));
        using var server = new WatchServer(wall);
        using var browser = new Browser();
        wall.Build(_screen);
        using var client = new HttpClient();
        Assert.Contains("wall.yaml:1:1", await client.GetStringAsync(server.Address, TestContext.Current.CancellationToken), StringComparison.Ordinal);

        Save(Walls.Long(4, "First"));
        Assert.True(wall.HasChanged);
        wall.Build(_screen);
        Assert.False(wall.HasChanged);
        browser.Open(server.Address);
        Assert.Equal("First", browser.Run("return document.getElementById('title').textContent").GetString());
        browser.Run("sheetgenReview.choose('A-2-02')");

        Save(Walls.Long(4, "First").Replace("vertical_spacing: 5", "vertical_spacing: five", StringComparison.Ordinal));
        wall.Build(_screen);
        browser.Wait("return document.getElementById('watch').textContent.includes('wall.yaml:')");
        Assert.Equal("First", browser.Run("return document.getElementById('title').textContent").GetString());

        Save(Walls.Long(4, "Second"));
        wall.Build(_screen);
        browser.Wait("return document.getElementById('title')?.textContent === 'Second' && globalThis.sheetgenReview?.chosen()?.key === 'A-2-02'");
        Assert.All(browser.Requests().Where(r => !r.StartsWith("data:", StringComparison.Ordinal)), r => Assert.StartsWith(server.Address, r, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_served_but_the_page_and_its_news()
    {
        var wall = new WatchedWall(Save("format: 1\n"));
        using var server = new WatchServer(wall);
        var address = new Uri(server.Address);
        string secret = address.AbsolutePath;

        Assert.Equal("127.0.0.1", address.Host);
        Assert.True(secret.Length >= 34);
        string host = FormattableString.Invariant($"127.0.0.1:{address.Port}");
        Assert.Equal("200", Status(address, $"GET {secret} HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET / HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET {secret}wall.yaml HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET {secret}../wall.yaml HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET {secret.Replace(secret[1], secret[1] == 'a' ? 'b' : 'a')} HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET {secret} HTTP/1.1\r\nHost: attacker.example\r\n\r\n"));
        Assert.Equal("404", Status(address, $"GET {secret} HTTP/1.1\r\n\r\n"));
        Assert.Equal("404", Status(address, $"POST {secret} HTTP/1.1\r\nHost: {host}\r\n\r\n"));
        Assert.Equal("404", Status(address, "nonsense\r\n\r\n"));
        Assert.Equal("200", Status(address, $"GET {secret} HTTP/1.1\r\nHost: {host}\r\n\r\n"));

        static string Status(Uri address, string request)
        {
            using var client = new TcpClient();
            client.Connect(IPAddress.Loopback, address.Port);
            using NetworkStream stream = client.GetStream();
            stream.Write(Encoding.ASCII.GetBytes(request));
            using var reader = new StreamReader(stream, Encoding.ASCII);
            return reader.ReadLine()!.Split(' ')[1];
        }
    }

    [Fact]
    public void Review_writes_the_page_and_nothing_else_beside_the_project_file()
    {
        string file = Save(Walls.Long(3));
        var told = new StringWriter(CultureInfo.InvariantCulture);

        Assert.Equal(0, Entry.Run(["review", file, "--no-open"], new Screen(TextWriter.Null, told, live: false)));
        Assert.Equal(["review.html"], Directory.GetFiles(Path.Combine(_walls.Folder, "review")).Select(Path.GetFileName));
        Assert.Equal(2, Entry.Run(["review", file, "--watch", "--out", "x"], new Screen(TextWriter.Null, told, live: false)));
        Assert.Contains("leave --out and --against away", told.ToString(), StringComparison.Ordinal);
    }

    public void Dispose() => _walls.Dispose();
}
