using System.Globalization;
using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class RoundTripTests
{
    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void What_is_written_is_read_again(DxfVersion version)
    {
        var document = SampleDocument.Everything();

        DocumentAssert.Equal(document, SampleDocument.Read(SampleDocument.Write(document, version)));
    }

    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void Handles_owners_and_names_are_in_order(DxfVersion version) =>
        Assert.Empty(HandleGraph.Problems(SampleDocument.Write(SampleDocument.Everything(), version)));
}
