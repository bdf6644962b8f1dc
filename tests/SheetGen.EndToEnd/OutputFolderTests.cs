using System.Text;
using SheetGen.Cli;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The swap of one set of files for another, with every state that a kill can leave.</summary>
public sealed class OutputFolderTests : IDisposable
{
    private static readonly string[] Names = ["a.txt", "b.txt", "c.txt"];

    private readonly TempFolder _temp = new();

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void A_new_folder_holds_the_set_and_nothing_else()
    {
        Assert.True(Folder("x/y/out").Write(Set("new", Names), () => false));
        Assert.Equal(["x", "x/y", "x/y/out", "x/y/out/a.txt", "x/y/out/b.txt", "x/y/out/c.txt"], _temp.Listing());
        Assert.Equal("new", File.ReadAllText(_temp.File("x/y/out/c.txt")));
    }

    [Fact]
    public void Files_of_others_stay_and_ours_that_are_no_longer_made_go()
    {
        Put("out/notes.txt", "mine");
        Put("out/a.txt", "old");
        Put("out/c.txt", "old");
        Folder("out").Write(Set("new", "a.txt", "b.txt"), () => false);
        Assert.Equal(["a.txt", "b.txt", "notes.txt"], _temp.Listing("out"));
        Assert.Equal("new", Read("out/a.txt"));
        Assert.Equal("mine", Read("out/notes.txt"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Stopped_between_files_leaves_a_new_folder_unmade_and_an_old_one_as_it_was(int after)
    {
        int asked = 0;
        Assert.False(Folder("deep/new").Write(Set("new", Names), () => asked++ >= after));
        Assert.Empty(_temp.Listing());

        Put("out/a.txt", "old");
        asked = 0;
        Assert.False(Folder("out").Write(Set("new", Names), () => asked++ >= after));
        Assert.Equal(["a.txt"], _temp.Listing("out"));
        Assert.Equal("old", Read("out/a.txt"));
    }

    [Fact]
    public void A_kill_before_the_set_was_complete_is_cleared_by_the_next_run()
    {
        Put("out/b.txt", "old");
        Put("out/.sheetgen-new/old/a.txt", "old");
        Put("out/.sheetgen-new/b.txt", "half");
        Put("out/.sheetgen-lock", "");
        int asked = 0;
        Assert.False(Folder("out").Write(Set("new", Names), () => asked++ >= 1));
        Assert.Equal(["a.txt", "b.txt"], _temp.Listing("out"));
        Assert.Equal(["old", "old"], [Read("out/a.txt"), Read("out/b.txt")]);
    }

    [Fact]
    public void A_kill_after_the_set_was_complete_is_finished_by_the_next_run()
    {
        Put("out/a.txt", "second");
        Put("out/.sheetgen-new/old/a.txt", "first");
        Put("out/.sheetgen-new/old/b.txt", "first");
        Put("out/.sheetgen-new/b.txt", "second");
        Put("out/.sheetgen-new/ready", "");
        int asked = 0;
        Assert.False(Folder("out").Write(Set("third", Names), () => asked++ >= 1));
        Assert.Equal(["a.txt", "b.txt"], _temp.Listing("out"));
        Assert.Equal(["second", "second"], [Read("out/a.txt"), Read("out/b.txt")]);
        Assert.True(Folder("out").Write(Set("third", Names), () => false));
        Assert.Equal(["a.txt", "b.txt", "c.txt"], _temp.Listing("out"));
        Assert.Equal("third", Read("out/b.txt"));
    }

    [Fact]
    public void A_second_run_is_kept_off_and_harms_nothing()
    {
        Put("out/a.txt", "old");
        Put("out/.sheetgen-new/b.txt", "half");
        using (new FileStream(_temp.File("out/.sheetgen-lock"), FileMode.Create, FileAccess.Write, FileShare.None))
        {
            var refused = Assert.Throws<OutputException>(() => Folder("out").Write(Set("new", Names), () => false));
            Assert.Contains("another run", refused.Message, StringComparison.Ordinal);
            Assert.Equal("half", Read("out/.sheetgen-new/b.txt"));
        }
    }

    [Fact]
    public void A_file_in_the_way_is_named_and_nothing_is_made()
    {
        Put("taken", "a file");
        Assert.Contains("taken is a file", Refused("taken"), StringComparison.Ordinal);
        Assert.Contains("taken is a file", Refused("taken/out"), StringComparison.Ordinal);
        Directory.CreateDirectory(_temp.File("out/b.txt"));
        Assert.Contains("b.txt is a folder", Refused("out"), StringComparison.Ordinal);
        Assert.Equal(["out", "out/b.txt", "taken"], _temp.Listing());
    }

    [Fact]
    public void A_trailing_separator_means_the_same_folder()
    {
        Folder("out" + Path.DirectorySeparatorChar).Write(Set("new", Names), () => false);
        Assert.Equal(["out", "out/a.txt", "out/b.txt", "out/c.txt"], _temp.Listing());
    }

    [Fact]
    public void A_linked_folder_stays_a_link()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights there");
        Directory.CreateDirectory(_temp.File("real"));
        Directory.CreateSymbolicLink(_temp.File("out"), _temp.File("real"));
        Folder("out").Write(Set("new", Names), () => false);
        Assert.Equal(["a.txt", "b.txt", "c.txt"], _temp.Listing("real"));
        Assert.NotNull(new DirectoryInfo(_temp.File("out")).LinkTarget);
    }

    [Theory]
    [InlineData(".sheetgen-new", true)]
    [InlineData(".sheetgen-new", false)]
    [InlineData(".sheetgen-lock", false)]
    public void A_link_in_place_of_our_own_folder_or_lock_is_refused_and_what_it_leads_to_stays(string own, bool there)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights there");
        Put("out/a.txt", "old");
        if (there)
            Put("elsewhere/a.txt", "someone's");
        File.CreateSymbolicLink(_temp.File("out/" + own), _temp.File("elsewhere"));
        Assert.Contains(own + " is a link", Refused("out"), StringComparison.Ordinal);
        Assert.Equal("old", Read("out/a.txt"));
        Assert.Equal(there, Directory.Exists(_temp.File("elsewhere")) && Read("elsewhere/a.txt") == "someone's");
    }

    [Fact]
    public void A_link_to_nowhere_or_to_a_file_in_place_of_a_result_is_replaced_and_its_target_stays()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights there");
        Put("elsewhere.txt", "someone's");
        Put("out/c.txt", "old");
        File.CreateSymbolicLink(_temp.File("out/a.txt"), _temp.File("elsewhere.txt"));
        File.CreateSymbolicLink(_temp.File("out/b.txt"), _temp.File("nowhere.txt"));
        Folder("out").Write(Set("new", Names), () => false);
        Assert.Equal(["elsewhere.txt", "out", "out/a.txt", "out/b.txt", "out/c.txt"], _temp.Listing());
        Assert.Equal(["someone's", "new", "new"], [Read("elsewhere.txt"), Read("out/a.txt"), Read("out/b.txt")]);
        Assert.Null(new FileInfo(_temp.File("out/a.txt")).LinkTarget);
    }

    [Fact]
    public void A_folder_of_someone_else_under_the_stand_ins_name_is_named_and_stays()
    {
        Put("out/a.txt", "old");
        Put(".out.sheetgen-swap/a.txt", "someone's");
        Assert.Contains("not this program's", Refused("out"), StringComparison.Ordinal);
        Assert.Equal(["old", "someone's"], [Read("out/a.txt"), Read(".out.sheetgen-swap/a.txt")]);
    }

    private string Refused(string folder) =>
        Assert.Throws<OutputException>(() => Folder(folder).Write(Set("new", Names), () => false)).Message;

    private OutputFolder Folder(string name) => new(_temp.File(name), Names);

    private static IReadOnlyList<OutputFile> Set(string content, params string[] names) =>
        [.. names.Select(n => new OutputFile(n, Encoding.UTF8.GetBytes(content)))];

    private void Put(string name, string content)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_temp.File(name))!);
        File.WriteAllText(_temp.File(name), content);
    }

    private string Read(string name) => File.ReadAllText(_temp.File(name));
}
