using System.Text.Json;
using Xunit;

namespace SheetGen.Browser;

/// <summary>Names that are markup, code or turned letters stay text, wherever they are shown.</summary>
[Trait("Category", "Outside")]
public sealed class HostileTests
{
    private const string Evil = "</script><img src=x onerror=alert(1)>\"'`${alert(1)}", Turned = "אבג\u202Eabc";

    [Fact]
    public void Names_with_markup_stay_text_and_run_nothing()
    {
        using var walls = new Walls();
        using var browser = new Browser();
        string page = walls.Build(Walls.Long(10, Evil + Turned, Evil), "evil");
        browser.Run("return 0");
        browser.Requests();
        browser.OpenFile(page);
        browser.Run("sheetgenReview.choose('A-1-02'); document.querySelector('#card textarea').value = arguments[0]; document.querySelector('#card textarea').dispatchEvent(new Event('change'))", Evil);
        browser.Keys("f");
        browser.Run("sheetgenReview.takeReview(arguments[0], arguments[0])", Evil);

        Assert.Equal(Evil + Turned, browser.Run("return document.getElementById('title').textContent").GetString());
        Assert.Equal(0, browser.Run("return document.querySelectorAll('img, [onerror]').length").GetInt32());
        Assert.Equal(3, browser.Run("return document.querySelectorAll('script').length").GetInt32());
        Assert.True(browser.Run("return [...document.querySelectorAll('[data-thing] title')].some(t => t.textContent.startsWith(arguments[0]))", Evil).GetBoolean());
        JsonElement review = JsonDocument.Parse(browser.Run("return sheetgenReview.reviewText()").GetString()!).RootElement;
        Assert.Equal(Evil, review.GetProperty("marks")[0].GetProperty("note").GetString());
        Assert.All(browser.Run("return sheetgenReview.bcfFiles().map(f => f[1])").EnumerateArray(), f => System.Xml.Linq.XDocument.Parse(f.GetString()!));
        Assert.Equal([], browser.Complaints());
        Assert.Single(browser.Requests(), r => !r.StartsWith("data:", StringComparison.Ordinal));
    }
}
