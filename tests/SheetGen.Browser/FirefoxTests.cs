using System.Text.Json;
using Xunit;

namespace SheetGen.Browser;

/// <summary>The same page in another maker's browser. Without a graphics card it has no WebGL here: the 3D view says so, and all else works.</summary>
[Trait("Category", "Outside")]
public sealed class FirefoxTests
{
    [Fact]
    public void The_page_works_in_firefox_too()
    {
        using var walls = new Walls();
        string page = walls.Build(Walls.Long(12), "fox");
        using var fox = new Firefox();
        fox.Size(1400, 1000);
        fox.OpenFile(page);

        JsonElement shown = fox.Run("return sheetgenReview.shown()");
        Assert.Equal(120, shown.GetArrayLength());
        string mark = shown[30].GetString()!;
        fox.Run($"sheetgenReview.choose('{mark}')");
        Assert.Contains(mark, fox.Run("return document.getElementById('card-body').textContent").GetString(), StringComparison.Ordinal);
        Assert.Equal(1, fox.Run("return document.querySelectorAll('#card .turn .now').length").GetInt32());

        // A click where the nail's coordinates lie chooses it.
        string clicked = fox.Run("""
            const d = JSON.parse(document.getElementById("data").textContent), n = d.nails[50], of = name => n[d.columns.indexOf(name)];
            const [x, y] = sheetgenReview.elevationPlace(of("wall"), of("x"), of("elevation")), hit = document.elementsFromPoint(x, y).find(e => e.closest("#elevation [data-nail]"));
            for (const type of ["pointerdown", "pointerup", "click"]) hit.dispatchEvent(new PointerEvent(type, { bubbles: true, clientX: x, clientY: y, pointerId: 1, isPrimary: true }));
            return [of("mark"), sheetgenReview.chosen()?.key].join(" ");
            """).GetString()!;
        Assert.Equal(clicked.Split(' ')[0], clicked.Split(' ')[1]);

        // Marks are kept, written as BCF, and read back, inflating included.
        fox.Run("document.querySelector('#card [data-state=question]').click()");
        string before = fox.Run("return JSON.parse(sheetgenReview.reviewText()).marks").ToString();
        string after = fox.Run("const bytes = await sheetgenReview.bcfBytes(); localStorage.clear(); await sheetgenReview.takeBcf(bytes, 'x.bcf'); return JSON.parse(sheetgenReview.reviewText()).marks").ToString();
        Assert.Equal(before, after);
        fox.Run("sheetgenReview.filter({ status: 'grid', words: '-3-' })");
        Assert.InRange(fox.Run("return sheetgenReview.shown().length").GetInt32(), 1, 119);
        Assert.True(fox.Picture().Length > 20_000);

        bool has3D = fox.Run("return document.querySelector('#space canvas')?.getContext('webgl2') != null").GetBoolean();
        Assert.DoesNotContain(fox.Complaints, c => has3D || !c.Contains("WebGL", StringComparison.OrdinalIgnoreCase));
        Assert.All(fox.Requests.Where(r => !r.StartsWith("data:", StringComparison.Ordinal)), r => Assert.StartsWith("file:", r, StringComparison.Ordinal));
        fox.Run("localStorage.clear()");
    }
}
