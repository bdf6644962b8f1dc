using System.IO.Compression;
using System.Text;
using System.Text.Json;
using SheetGen.Review;
using Xunit;

namespace SheetGen.Browser;

/// <summary>The review page of the demo wall in a real browser, from disk.</summary>
[Trait("Category", "Outside")]
public sealed class PageTests(DemoPage demo) : IClassFixture<DemoPage>
{
    private readonly Browser _browser = demo.Fresh();

    private static List<Dictionary<string, JsonElement>> Nails(Browser browser) =>
        [.. browser.Run("const d = JSON.parse(document.getElementById('data').textContent); return d.nails.map(r => Object.fromEntries(d.columns.map((c, i) => [c, r[i]])))")
            .EnumerateArray().Select(n => n.EnumerateObject().ToDictionary(p => p.Name, p => p.Value))];

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(v => v.GetDouble())];

    private string? Chosen() => _browser.Run("return sheetgenReview.chosen()") is { ValueKind: JsonValueKind.Object } c ? c.GetProperty("key").GetString() : null;

    [Fact]
    public void Opens_from_disk_without_a_complaint_or_a_request()
    {
        _browser.Requests();
        _browser.OpenFile(demo.Page);
        _browser.Run("sheetgenReview.choose(sheetgenReview.shown()[5])");

        Assert.Empty(_browser.Complaints());
        Assert.Equal([new Uri(demo.Page).AbsoluteUri], _browser.Requests().Where(r => !r.StartsWith("data:", StringComparison.Ordinal)));
        Assert.StartsWith("Heron Street bridge", _browser.Run("return document.title").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_policy_lets_nothing_out_and_nothing_in()
    {
        JsonElement tried = _browser.RunAsync("""
            const image = new Image(); let blocked = [];
            document.addEventListener("securitypolicyviolation", e => blocked.push(e.effectiveDirective));
            image.src = "http://127.0.0.1:9/x.png"; document.body.append(image);
            const script = document.createElement("script"); script.textContent = "globalThis.broken = true"; document.body.append(script);
            fetch("http://127.0.0.1:9/").catch(() => 0).then(() => setTimeout(() => done([globalThis.broken === true, ...blocked]), 300));
            """);

        string[] told = [.. tried.EnumerateArray().Skip(1).Select(t => t.GetString()!)];
        Assert.False(tried[0].GetBoolean());
        Assert.Contains("img-src", told);
        Assert.Contains("script-src-elem", told);
        Assert.Contains("connect-src", told);
        _browser.Complaints();
    }

    [Fact]
    public void A_nail_stands_in_each_view_where_its_coordinates_say()
    {
        foreach (Dictionary<string, JsonElement> n in Nails(_browser).Where((_, i) => i % 40 == 3))
        {
            string mark = n["mark"].GetString()!;
            double[] head = Numbers(n["head"]), tip = Numbers(n["tip"]);
            double[] at = Numbers(_browser.Run("return sheetgenReview.elevationPlace(arguments[0], arguments[1], arguments[2])", n["wall"].GetString()!, n["x"].GetDouble(), n["elevation"].GetDouble()));
            Assert.True(_browser.Run("return document.elementsFromPoint(arguments[0], arguments[1]).some(e => e.closest('#elevation [data-nail]')?.dataset.nail === arguments[2])", at[0], at[1], mark).GetBoolean(), mark);
            _browser.Click(at[0], at[1]);
            Assert.Equal(mark, Chosen());

            double[] middle = [.. head.Zip(tip).Select(p => (p.First + p.Second) / 2)];
            double[] traced = Numbers(_browser.Run("return sheetgenReview.planPlace(arguments[0])", (object)middle));
            // In plan the nails of a column lie over one another, and names may stand on them.
            Assert.True(_browser.Run("return document.elementsFromPoint(arguments[0], arguments[1]).some(e => e.closest('[data-nail]')?.dataset.nail === arguments[2])", traced[0], traced[1], mark).GetBoolean(), mark);
        }
    }

    [Fact]
    public void Picking_in_3D_gives_the_nail_that_is_seen()
    {
        // Front on, heads lie open behind the clear face where nothing stands before them.
        _browser.Run("[...document.querySelectorAll('#space button')].find(b => b.textContent === 'Front').click()");
        List<Dictionary<string, JsonElement>> nails = Nails(_browser);
        int right = 0, asked = 0;
        foreach (Dictionary<string, JsonElement> n in nails.Where((n, i) => i % 3 == 0 && n["section"].GetString() == "C"))
        {
            double[] at = Place(n["head"]);
            string? picked = _browser.Run("return sheetgenReview.pickAt(arguments[0], arguments[1])?.nail", at[0], at[1]).GetString();
            asked++;
            if (picked == n["mark"].GetString())
                right++;
            // A hole is about a pixel wide here: where another one is hit, it does lie under the pointer.
            Dictionary<string, JsonElement> hit = nails.Single(m => m["mark"].GetString() == picked);
            Assert.True(FromSegment(at, Place(hit["head"]), Place(hit["tip"])) < 5, $"{n["mark"]} gave {picked}");
        }
        Assert.True(asked >= 15 && right > 0.7 * asked, $"{right} of {asked}");
        JsonElement nothing = _browser.Run("const b = document.querySelector('#space canvas').getBoundingClientRect(); return sheetgenReview.pickAt(b.x + 2, b.y + 2)");
        Assert.Equal(JsonValueKind.Null, nothing.ValueKind);

        double[] Place(JsonElement point) => Numbers(_browser.Run("return sheetgenReview.placeInWindow(arguments[0])", (object)Numbers(point)));
        static double FromSegment(double[] p, double[] a, double[] b)
        {
            double dx = b[0] - a[0], dy = b[1] - a[1], square = dx * dx + dy * dy;
            double t = square > 0 ? Math.Clamp(((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square, 0, 1) : 0;
            return Math.Sqrt(Math.Pow(p[0] - a[0] - t * dx, 2) + Math.Pow(p[1] - a[1] - t * dy, 2));
        }
    }

    [Theory]
    [InlineData("#elevation svg.drawing")]
    [InlineData("#plan svg.drawing")]
    [InlineData("#space canvas")]
    public void Each_picture_shows_something(string css)
    {
        byte[] light = _browser.Picture(css);
        _browser.Run("[...document.querySelectorAll('#tools button')].find(b => b.textContent === 'Light / dark').click()");
        byte[] dark = _browser.Picture(css);

        Assert.True(Colours(light) > 12, css);
        Assert.True(Colours(dark) > 12, css);
        Assert.NotEqual(light, dark);

        int Colours(byte[] png) => _browser.RunAsync($$"""
            const image = new Image();
            image.onload = () => {
              const c = document.createElement("canvas"); c.width = image.width; c.height = image.height;
              const g = c.getContext("2d"); g.drawImage(image, 0, 0);
              const d = g.getImageData(0, 0, c.width, c.height).data, seen = new Set();
              for (let i = 0; i < d.length; i += 4) seen.add((d[i] >> 3) << 10 | (d[i + 1] >> 3) << 5 | d[i + 2] >> 3);
              done(seen.size);
            };
            image.src = "data:image/png;base64,{{Convert.ToBase64String(png)}}";
            """).GetInt32();
    }

    [Fact]
    public void Choosing_in_one_place_shows_in_all()
    {
        string mark = Nails(_browser).First(n => n["status"].GetString() == "noted")["mark"].GetString()!;
        _browser.Run("sheetgenReview.filter({ words: arguments[0] })", mark);
        _browser.Find($"#nails tr[data-nail='{mark}'] button").Click();

        Assert.Equal(mark, Chosen());
        Assert.Contains(mark, _browser.Run("return document.getElementById('card-body').textContent").GetString(), StringComparison.Ordinal);
        Assert.True(_browser.Run("return document.querySelector(`#elevation [data-nail='${arguments[0]}']`).classList.contains('chosen')", mark).GetBoolean());
        Assert.True(_browser.Run("return document.querySelector(`#plan [data-nail='${arguments[0]}']`).classList.contains('chosen')", mark).GetBoolean());
        _browser.Wait($"return document.querySelector('#space .labels').textContent.includes('{mark}')");
        Assert.Equal(1, _browser.Run("return document.querySelectorAll('#card .cut .self').length").GetInt32());
        Assert.Equal(1, _browser.Run("return document.querySelectorAll('#card .turn .now').length").GetInt32());
    }

    [Fact]
    public void Filters_and_histograms_show_the_nails_that_they_name()
    {
        List<Dictionary<string, JsonElement>> nails = Nails(_browser);
        int Shown() => _browser.Run("return sheetgenReview.shown().length").GetInt32();

        _browser.Run("sheetgenReview.filter({ status: 'moved', section: 'B' })");
        Assert.Equal(nails.Count(n => n["status"].GetString() == "moved" && n["section"].GetString() == "B"), Shown());
        _browser.Run("sheetgenReview.filter({ clear: '1', clearOver: '0.6' })");
        Assert.Equal(nails.Count(n => n["clear"].GetDouble() is >= 0.6 and < 1), Shown());
        _browser.Run("sheetgenReview.filter({ nearest: 'S4' })");
        Assert.Equal(nails.Count(n => n["nearest"].GetString() == "S4"), Shown());
        _browser.Run("sheetgenReview.filter({})");
        Assert.Equal(nails.Count, Shown());
        _browser.Run("[...document.querySelectorAll('#charts .chart')][1].querySelector('.barhit').dispatchEvent(new MouseEvent('click'))");
        double least = nails.Min(n => n["length"].GetDouble());
        Assert.Equal(nails.Count(n => n["length"].GetDouble() == least), Shown());
        _browser.Run("sheetgenReview.filter({ severity: 'warning' })");
        Assert.Equal(_browser.Run("return JSON.parse(document.getElementById('data').textContent).checked.findings.filter(f => f.severity === 'warning').length").GetInt32(),
            _browser.Run("return document.querySelectorAll('#findings li[data-id]').length").GetInt32());
    }

    [Fact]
    public void Keys_step_through_nails_and_findings()
    {
        _browser.Run("document.activeElement.blur(); sheetgenReview.choose(sheetgenReview.shown()[0])");
        string first = Chosen()!;
        _browser.Keys(OpenQA.Selenium.Keys.ArrowDown);
        string below = Chosen()!;
        Assert.NotEqual(first, below);
        _browser.Keys(OpenQA.Selenium.Keys.ArrowUp);
        Assert.Equal(first, Chosen());
        _browser.Keys("f");
        Assert.Equal("finding", _browser.Run("return sheetgenReview.chosen().kind").GetString());
        _browser.Keys("?");
        Assert.True(_browser.Run("return document.getElementById('help').open").GetBoolean());
        _browser.Keys(OpenQA.Selenium.Keys.Escape);
        _browser.Keys(OpenQA.Selenium.Keys.Escape);
        Assert.Null(Chosen());
    }

    [Fact]
    public void Marks_are_kept_saved_and_loaded_and_tell_what_changed_since()
    {
        List<Dictionary<string, JsonElement>> nails = Nails(_browser);
        string near = nails.First(n => n["nearest"].GetString() == "S4" && n["status"].GetString() != "grid")["mark"].GetString()!, far = nails.Last(n => n["section"].GetString() == "C")["mark"].GetString()!;
        foreach (string mark in new[] { near, far })
        {
            _browser.Run("sheetgenReview.choose(arguments[0])", mark);
            _browser.Find("#card textarea").SendKeys("look again <b>here</b>");
            _browser.Find("#card .initials").SendKeys("AB");
            _browser.Find("#card [data-state=question]").Click();
        }
        string saved = _browser.Run("return sheetgenReview.reviewText()").GetString()!;
        JsonElement review = JsonDocument.Parse(saved).RootElement;
        Assert.Equal(2, review.GetProperty("marks").GetArrayLength());
        Assert.Equal("look again <b>here</b>", review.GetProperty("marks")[0].GetProperty("note").GetString());

        // Kept: the page opened again has them.
        _browser.OpenFile(demo.Page);
        _browser.Run("sheetgenReview.choose(arguments[0])", near);
        Assert.Equal("true", _browser.Find("#card [data-state=question]").GetAttribute("aria-pressed"));

        // The next revision: shaft S4 is larger. What is near it has changed since, what is far has not.
        _browser.Run("localStorage.clear()");
        _browser.OpenFile(demo.Revised);
        Assert.Equal("", _browser.Run("sheetgenReview.choose(arguments[0]); return document.querySelector('#card [aria-pressed=true]')?.textContent ?? ''", far).GetString());
        _browser.Run("sheetgenReview.takeReview(arguments[0], 'review.json')", saved);
        _browser.Run("sheetgenReview.choose(arguments[0])", far);
        Assert.Equal("true", _browser.Find("#card [data-state=question]").GetAttribute("aria-pressed"));
        Assert.Equal(0, _browser.Run("return document.querySelectorAll('#card .since').length").GetInt32());
        _browser.Run("sheetgenReview.choose(arguments[0])", near);
        Assert.Equal(1, _browser.Run("return document.querySelectorAll('#card .since').length").GetInt32());

        // The comparison names what differs, as the two data sets say.
        List<Dictionary<string, JsonElement>> revised = Nails(_browser);
        HashSet<string> marks = [.. nails.Select(n => n["mark"].GetString()!)];
        int differ = revised.Count(n => !marks.Contains(n["mark"].GetString()!) || nails.First(o => o["mark"].GetString() == n["mark"].GetString())["own"].GetString() != n["own"].GetString())
            + nails.Count(o => revised.All(n => n["mark"].GetString() != o["mark"].GetString()));
        Assert.True(differ > 0);
        Assert.Equal(differ, _browser.Run("return document.querySelectorAll('#changes tbody tr').length").GetInt32());
        Assert.True(_browser.Run("return document.querySelectorAll('#plan .ghost').length").GetInt32() > 0);
        // The older page itself may be taken as well.
        _browser.Run("sheetgenReview.takeReview(arguments[0], 'old.html')", File.ReadAllText(demo.Page));
        Assert.Equal(differ, _browser.Run("return document.querySelectorAll('#changes tbody tr').length").GetInt32());
        // So does a page that was made against the older one.
        _browser.Run("localStorage.clear()");
        _browser.OpenFile(demo.Compared);
        Assert.Equal(differ, _browser.Run("return document.querySelectorAll('#changes tbody tr').length").GetInt32());
        Assert.Empty(_browser.Complaints());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"kind\": \"sheetgen review\", \"format\": 1, \"columns\": [\"mark\"], \"nails\": [[1]], \"units\": \"ft\", \"origin\": [0, 0]}")]
    [InlineData("{\"kind\": \"sheetgen review\", \"format\": 1, \"columns\": [\"mark\", \"head\", \"tip\"], \"nails\": [[\"A\", [0, 0, 0], [0, 0, null]]], \"units\": \"ft\", \"origin\": [0, 0]}")]
    [InlineData("<!DOCTYPE html><script id='data'>alert(1)</script>")]
    [InlineData("")]
    public void What_is_no_review_is_refused_with_a_reason(string text)
    {
        _browser.Run("sheetgenReview.takeReview(arguments[0], 'x.json')", text);
        Assert.Contains("x.json was not taken", _browser.Run("return document.getElementById('news').textContent").GetString(), StringComparison.Ordinal);
        Assert.Empty(_browser.Complaints());
    }

    [Fact]
    public void Marks_become_topics_of_BCF()
    {
        _browser.Keys("f");
        _browser.Keys("q");
        _browser.Run("sheetgenReview.choose(sheetgenReview.shown()[9])");
        _browser.Keys("a");
        byte[] bytes = [.. _browser.RunAsync("sheetgenReview.bcfBytes().then(done)").EnumerateArray().Select(b => b.GetByte())];
        using var archive = new ZipArchive(new MemoryStream(bytes));
        string Text(ZipArchiveEntry entry) => new StreamReader(entry.Open(), Encoding.UTF8).ReadToEnd();

        Assert.Contains("VersionId=\"3.0\"", Text(archive.GetEntry("bcf.version")!), StringComparison.Ordinal);
        Assert.Equal(2, archive.Entries.Count(e => e.Name == "markup.bcf"));
        Assert.Contains(archive.Entries, e => e.Name == "viewpoint.bcfv");
        foreach (ZipArchiveEntry entry in archive.Entries)
            System.Xml.Linq.XDocument.Parse(Text(entry));
        _browser.Run("localStorage.clear()");
    }

    [Fact]
    public void A_BCF_file_brings_the_marks_back_also_from_another_program()
    {
        string nail = Nails(_browser)[9]["mark"].GetString()!;
        _browser.Keys("f");
        _browser.Keys("q");
        _browser.Run("sheetgenReview.choose(arguments[0])", nail);
        _browser.Keys("a");
        _browser.Find("#card textarea").SendKeys("drill <last> & look");
        _browser.Find("#card .initials").SendKeys("AB");
        _browser.Find("#card h3").Click();
        byte[] saved = [.. _browser.RunAsync("sheetgenReview.bcfBytes().then(done)").EnumerateArray().Select(b => b.GetByte())];
        string Marks() => _browser.Run("return JSON.stringify(JSON.parse(sheetgenReview.reviewText()).marks)").GetString()!;
        string before = Marks();
        Assert.Equal(2, JsonDocument.Parse(before).RootElement.GetArrayLength());

        _browser.Run("localStorage.clear()");
        _browser.OpenFile(demo.Page);
        Assert.Equal("[]", Marks());
        TakeBcf(saved);
        Assert.Equal(before, Marks());

        // Another program: deflated, the topic answered and closed, our link dropped, namespaces and comments added, a topic of its own.
        using var stream = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(saved)))
        using (var to = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in from.Entries)
            {
                string text = new StreamReader(entry.Open(), Encoding.UTF8).ReadToEnd();
                if (text.Contains("Nail " + nail, StringComparison.Ordinal))
                {
                    text = System.Text.RegularExpressions.Regex.Replace(text, "<ReferenceLinks>.*?</ReferenceLinks>", "").Replace("TopicStatus=\"Accepted\"", "TopicStatus='Closed'", StringComparison.Ordinal)
                        .Replace("</Comments>", "<!-- theirs --><Comment Guid=\"0a0a0a0a-0000-4000-8000-000000000001\"><Date>2031-05-06T07:08:09Z</Date><Author>CD</Author><Comment><![CDATA[moved <to> B]]></Comment></Comment></Comments>", StringComparison.Ordinal);
                }
                using var writer = new StreamWriter(to.CreateEntry(entry.FullName, CompressionLevel.SmallestSize).Open(), new UTF8Encoding(true));
                writer.Write(text);
            }
            using var strange = new StreamWriter(to.CreateEntry("0b0b0b0b-0000-4000-8000-000000000002/markup.bcf").Open());
            strange.Write("<?xml version=\"1.0\"?><b:Markup xmlns:b=\"x\"><b:Topic Guid=\"0b0b0b0b-0000-4000-8000-000000000002\"><b:Title>The crane</b:Title></b:Topic></b:Markup>");
        }
        _browser.Run("localStorage.clear()");
        _browser.OpenFile(demo.Page);
        TakeBcf(stream.ToArray());
        Assert.Contains("The crane", _browser.Run("return document.getElementById('news').textContent").GetString(), StringComparison.Ordinal);
        JsonElement mark = JsonDocument.Parse(Marks()).RootElement.EnumerateArray().Single(m => m.GetProperty("id").GetString() == nail);
        Assert.Equal("", mark.GetProperty("state").GetString());
        string note = mark.GetProperty("note").GetString()!;
        Assert.StartsWith("status Closed", note, StringComparison.Ordinal);
        Assert.Contains("drill <last> & look", note, StringComparison.Ordinal);
        Assert.Contains("CD, 2031-05-06: moved <to> B", note, StringComparison.Ordinal);
        Assert.Equal(("CD", "2031-05-06"), (mark.GetProperty("initials").GetString(), mark.GetProperty("on").GetString()));
        _browser.Run("sheetgenReview.choose(arguments[0])", nail);
        Assert.Contains("not known", _browser.Find("#card .since").Text, StringComparison.Ordinal);

        foreach (byte[] broken in new[] { saved[..(saved.Length / 2)], [.. saved[..40], .. new byte[200]], Encoding.ASCII.GetBytes("PK") })
        {
            TakeBcf(broken);
            Assert.Contains("x.bcf was not taken", _browser.Run("return document.getElementById('news').textContent").GetString(), StringComparison.Ordinal);
        }
        Assert.Empty(_browser.Complaints());
        _browser.Run("localStorage.clear()");
    }

    private void TakeBcf(byte[] bytes) => _browser.RunAsync($"sheetgenReview.takeBcf([{string.Join(',', bytes)}], 'x.bcf').then(() => done(0))");

    [Theory]
    [InlineData("")]
    [InlineData(", coordinate_zone: Invented grid 7")]
    public void Cameras_of_its_BCF_look_where_the_exported_findings_are(string zone)
    {
        string yaml = Walls.Long(6).Replace("units: ft}", "units: ft" + zone + "}", StringComparison.Ordinal).Replace("offset: 30}, diameter: 3", "offset: 6}, diameter: 7", StringComparison.Ordinal)
            + "rules: {redirect: {field_tolerance: 1, maximum: 1}}\n";
        using var walls = new Walls();
        string page = walls.Build(yaml, "zone", "--also", "bcf");
        _browser.OpenFile(page);
        _browser.Run("localStorage.clear()");
        _browser.OpenFile(page);
        JsonElement finding = _browser.Run("const f = JSON.parse(document.getElementById('data').textContent).checked.findings.find(f => f.points?.length === 2); return [f.id, f.message]");
        _browser.Run("document.querySelector(`#findings li[data-id='${arguments[0]}'] button`).click()", finding[0].GetString()!);
        _browser.Keys("q");
        byte[] bytes = [.. _browser.RunAsync("sheetgenReview.bcfBytes().then(done)").EnumerateArray().Select(b => b.GetByte())];
        System.Xml.Linq.XElement[] own = Views(bytes), exported = Views(File.ReadAllBytes(Path.Combine(Path.GetDirectoryName(page)!, "findings.bcf")));
        double[] eye = Triple(own.Single(), "CameraViewPoint"), direction = Triple(own.Single(), "CameraDirection");
        double least = exported.Where(v => v.Descendants("StartPoint").Any()).Min(v =>
        {
            double[] to = [.. Triple(v, "StartPoint").Zip(eye).Select(p => p.First - p.Second)];
            double along = to.Zip(direction).Sum(p => p.First * p.Second);
            return Math.Sqrt(to.Zip(direction).Sum(p => Math.Pow(p.First - along * p.Second, 2)));
        });
        Assert.True(least < 1e-3, $"{least} m beside the point");
        _browser.Run("localStorage.clear()");

        static System.Xml.Linq.XElement[] Views(byte[] archive)
        {
            using var zip = new ZipArchive(new MemoryStream(archive));
            return [.. zip.Entries.Where(e => e.Name == "viewpoint.bcfv").Select(e => System.Xml.Linq.XDocument.Load(e.Open()).Root!)];
        }
        static double[] Triple(System.Xml.Linq.XElement view, string name) =>
            [.. new[] { "X", "Y", "Z" }.Select(a => double.Parse(view.Descendants(name).First().Element(a)!.Value, System.Globalization.CultureInfo.InvariantCulture))];
    }

    [Fact]
    public void What_a_nail_carries_stands_on_its_card_in_the_table_and_in_the_list()
    {
        JsonElement effect = _browser.Run("return JSON.parse(document.getElementById('data').textContent).checked.effect");
        JsonElement[] changed = [.. effect.GetProperty("nails").EnumerateArray().Where(n => n.GetProperty("changed").GetBoolean())];
        Assert.True(changed.Length > 3);
        Assert.False(_browser.Run("return document.getElementById('effect').hidden").GetBoolean());
        string list = _browser.Find("#effect").Text;
        Assert.Contains("deflection are not checked here", list, StringComparison.Ordinal);
        Assert.All(changed.Take(100), n => Assert.Contains(n.GetProperty("nail").GetString()!, list, StringComparison.Ordinal));
        JsonElement one = changed.MaxBy(n => n.GetProperty("area_of_design").GetDouble());
        string mark = one.GetProperty("nail").GetString()!, share = one.GetProperty("area_of_design").GetDouble().ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
        _browser.Find($"#effect button.link[class~=one]").Click();
        Assert.NotNull(Chosen());
        _browser.Run("sheetgenReview.choose(arguments[0]); sheetgenReview.filter({ words: arguments[0] })", mark);
        Assert.Contains($"{share} of the design's", _browser.Find("#card-body").Text, StringComparison.Ordinal);
        Assert.Contains(share, _browser.Find($"#nails tr[data-nail='{mark}']").Text, StringComparison.Ordinal);
        if (one.GetProperty("drawn").TryGetProperty("ratio", out JsonElement ratio))
        {
            string lowest = ratio.GetDouble().ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
            Assert.Contains(lowest, _browser.Find("#card .checks").Text, StringComparison.Ordinal);
            Assert.Contains(lowest, _browser.Find($"#nails tr[data-nail='{mark}']").Text, StringComparison.Ordinal);
        }
        _browser.Run("sheetgenReview.filter({})");
    }

    [Fact]
    public void Prints_on_paper_with_pictures_and_cautions()
    {
        Assert.True(_browser.Pdf().Length > 40_000);
        _browser.Cdp("Emulation.setEmulatedMedia", new() { ["media"] = "print" });
        Assert.Equal("none", _browser.Run("return getComputedStyle(document.getElementById('tools')).display").GetString());
        Assert.Contains("engineer of record", _browser.Run("return document.getElementById('cautions').innerText").GetString(), StringComparison.Ordinal);
        _browser.Cdp("Emulation.setEmulatedMedia", new() { ["media"] = "" });
    }

    [Fact]
    public void Fits_a_screen_320_wide()
    {
        _browser.Size(320, 800);
        _browser.Run("sheetgenReview.choose(sheetgenReview.shown()[40])");
        Assert.InRange(_browser.Run("return document.documentElement.scrollWidth").GetInt32(), 280, 320);
        Assert.True(_browser.Run("return document.querySelector('#space canvas').clientWidth").GetInt32() > 200);
    }

    [Fact]
    public void The_system_may_ask_for_dark()
    {
        _browser.Cdp("Emulation.setEmulatedMedia", new() { ["features"] = new object[] { new Dictionary<string, object?> { ["name"] = "prefers-color-scheme", ["value"] = "dark" } } });
        _browser.OpenFile(demo.Page);
        Assert.Equal("dark", _browser.Run("return document.documentElement.dataset.look").GetString());
        _browser.Cdp("Emulation.setEmulatedMedia", new() { ["features"] = Array.Empty<object>() });
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public void Axe_finds_nothing_that_shuts_anyone_out(string look)
    {
        string axe = Path.Combine(Browser.Root(), "tests", "Tools", "node", "node_modules", "axe-core", "axe.min.js");
        Browser.Need(axe);
        _browser.Run("document.documentElement.dataset.look = arguments[0]; sheetgenReview.choose(sheetgenReview.shown()[60])", look);
        _browser.Run(File.ReadAllText(axe) + "; globalThis.axe = axe;");
        JsonElement found = _browser.RunAsync("axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'] }).then(r => done(r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.target.join(' ') + ' ' + n.failureSummary).join(' | '))))");
        Assert.Empty(found.EnumerateArray().Select(v => v.GetString()));
    }
}

/// <summary>The demo's page, one of a revision of it, and a browser.</summary>
public sealed class DemoPage : IDisposable
{
    private readonly Walls _walls = new();
    private readonly Lazy<Browser> _browser = new(() => new Browser());

    public DemoPage()
    {
        string yaml = Walls.Demo("heron-street-bridge");
        Page = _walls.Build(yaml, "demo");
        string larger = yaml.Replace("at: {station: 11+08, offset: 5.8}, diameter: 36 in", "at: {station: 11+08, offset: 5.8}, diameter: 42 in", StringComparison.Ordinal);
        Assert.NotEqual(yaml, larger);
        Revised = _walls.Build(larger, "revised");
        Compared = Path.Combine(_walls.Folder, "compared.html");
        File.WriteAllBytes(Compared, ReviewPage.Against(File.ReadAllBytes(Revised), "demo.html", File.ReadAllText(Page)));
    }

    public string Page { get; }

    public string Revised { get; }

    /// <summary>The revision's page with the demo's in it.</summary>
    public string Compared { get; }

    /// <summary>The browser with the page opened anew and nothing remembered.</summary>
    public Browser Fresh()
    {
        Browser browser = _browser.Value;
        browser.Size(1400, 1000);
        browser.OpenFile(Page);
        browser.Run("localStorage.clear()");
        browser.OpenFile(Page);
        browser.Complaints();
        return browser;
    }

    public void Dispose()
    {
        if (_browser.IsValueCreated)
            _browser.Value.Dispose();
        _walls.Dispose();
    }
}
