using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Limits called proven against what is possible, and how many figures of them were compared: a figure without a limit, or behind one that is not reached, says nothing.</summary>
internal sealed class Compared
{
    private int _unresolved;
    private int _noted;
    private int _effort;

    /// <summary>No limit is above what is possible; of the later figures none where an earlier one is above its limit.</summary>
    public void AssertLimit(LayoutScore score, double unresolved, double noted, double effort, string where)
    {
        if (score.Unresolved.Bound is not double first)
            return;
        Assert.True(first <= unresolved, $"{where}: unresolved proven {first}, {unresolved} possible");
        _unresolved++;
        if (unresolved > first || score.Noted.Bound is not double second)
            return;
        Assert.True(second <= noted, $"{where}: noted proven {second}, {noted} possible");
        _noted++;
        if (noted > second || score.Effort.Bound is not double third)
            return;
        Assert.True(third <= effort + 1e-6, $"{where}: effort proven {third}, {effort} possible");
        _effort++;
    }

    /// <summary>At least so many of each figure were compared.</summary>
    public void AssertMany(int unresolved, int noted, int effort) =>
        Assert.True(_unresolved >= unresolved && _noted >= noted && _effort >= effort, $"{this}; wanted at least {unresolved}, {noted}, {effort}");

    public override string ToString() => $"compared: unresolved {_unresolved}, noted {_noted}, effort {_effort}";
}
