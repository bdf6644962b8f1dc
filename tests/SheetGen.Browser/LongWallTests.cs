using System.Text.Json;
using Xunit;

namespace SheetGen.Browser;

/// <summary>A wall of 3,000 nails: sizes hold, picking is right. Frames and picking are measured on the processor and told, not judged: speed is a matter of the machine.</summary>
[Trait("Category", "Outside")]
[Trait("Category", "Long")]
public sealed class LongWallTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(30, 1_000_000)]
    [InlineData(300, 10_000_000)]
    public void Pages_stay_small_and_picking_right(int columns, long most)
    {
        using var walls = new Walls();
        using var browser = new Browser();
        string page = walls.Build(Walls.Long(columns), "long");
        long size = new FileInfo(page).Length;
        Assert.True(size < most, $"{size} bytes");

        browser.OpenFile(page);
        int nails = browser.Run("return sheetgenReview.shown().length").GetInt32();
        Assert.Equal(columns * 10, nails);
        browser.Run("[...document.querySelectorAll('#space button')].find(b => b.textContent === 'Front').click()");
        // Near enough that a hole is some pixels wide: the nails about the middle of the wall.
        for (int i = 0; i < (columns > 100 ? 11 : 4); i++)
            browser.Run("[...document.querySelectorAll('#space button')].find(b => b.textContent === '+').click()");
        JsonElement picking = browser.Run("""
            const d = JSON.parse(document.getElementById("data").textContent), head = d.columns.indexOf("head"), box = document.querySelector("#space canvas").getBoundingClientRect();
            const asked = d.nails.filter(n => { const [x, y] = sheetgenReview.placeInWindow(n[head]); return x > box.left + 9 && x < box.right - 9 && y > box.top + 9 && y < box.bottom - 9; });
            let right = 0, seen = 0, time = 0;
            for (const n of asked) {
              const [x, y] = sheetgenReview.placeInWindow(n[head]), start = performance.now(), hit = sheetgenReview.pickAt(x, y);
              time += performance.now() - start;
              if (hit) seen++;
              if (hit?.nail === n[0]) right++;
            }
            return [asked.length, seen, right, time / asked.length];
            """);
        double frame = browser.Run("return sheetgenReview.measureFrames(10)").GetDouble();
        // Processor time of the page's main thread from opening to the first picture, and what the browser says of the clock.
        browser.CountProcessorTime();
        browser.OpenFile(page);
        browser.Wait("return performance.getEntriesByName('first-contentful-paint').length > 0");
        double opening = 1000 * browser.ProcessorTime()["TaskDuration"], picture = browser.Run("return performance.getEntriesByName('first-contentful-paint')[0].startTime").GetDouble();
        output.WriteLine(FormattableString.Invariant($"{nails} nails: page {size / 1024.0:0} KB, picking {picking[3].GetDouble():0.0} ms, frame {frame:0.0} ms ({1000 / frame:0} a second), first picture {picture:0} ms after opening, of which the page's thread works {opening:0} ms: software rendering (SwiftShader)"));
        Assert.True(picking[0].GetInt32() >= 20, $"only {picking[0]} nails in view");
        Assert.True(picking[2].GetInt32() >= 0.9 * picking[0].GetInt32(), $"{picking}");
        Assert.Empty(browser.Complaints());
    }
}
