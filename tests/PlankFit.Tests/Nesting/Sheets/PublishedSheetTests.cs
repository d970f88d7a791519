using System.Collections.Immutable;
using PlankFit.Tests.Nesting.Sheets.Guillotine;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting.Sheets;

/// <summary>Instances read from collections: Christofides and Whitlock 1977 (cgcut), Beasley 1985 (gcut), Wang 1983; their optima were worked out anew by others.</summary>
public sealed class PublishedSheetTests
{
    [Theory]
    [InlineData("cgcut1.txt", 244)]
    [InlineData("cgcut2.txt", 2892)]
    public void ChristofidesAndWhitlock(string file, double optimum)
    {
        double[] n = PublishedCutting.Numbers("2d-guillotine", file);
        Reaches(
            n[1],
            n[2],
            [
                .. n.Skip(3)
                    .Chunk(4)
                    .Take((int)n[0])
                    .Select(c => new SheetItem(c[0], c[1], c[3], (int)c[2])),
            ],
            optimum
        );
    }

    [Theory]
    [InlineData("gcut1.txt", 56460)]
    [InlineData("gcut2.txt", 60536)]
    [InlineData("gcut3.txt", 61036)]
    [InlineData("gcut4.txt", 61698)]
    public void Beasley(string file, double optimum)
    {
        double[] n = PublishedCutting.Numbers("2d-guillotine", file);
        Reaches(
            n[1],
            n[2],
            [
                .. n.Skip(3)
                    .Chunk(3)
                    .Take((int)n[0])
                    .Select(c => new SheetItem(c[0], c[1], c[2], null)),
            ],
            optimum
        );
    }

    /// <summary>With the sheet turned and the pieces not, less is got: the direction of the grain is kept.</summary>
    [Theory]
    [InlineData(false, 2277)]
    [InlineData(true, 2163)]
    public void WangWithTheGrainKept(bool turned, double optimum)
    {
        double[] n = PublishedCutting.Numbers("2d-guillotine", "wang1.dat");
        Reaches(
            n[turned ? 2 : 1],
            n[turned ? 1 : 2],
            [
                .. n.Skip(3)
                    .Chunk(4)
                    .Take((int)n[0])
                    .Select(c => new SheetItem(c[1], c[2], c[0], (int)c[3])),
            ],
            optimum
        );
    }

    private static void Reaches(
        double length,
        double width,
        ImmutableArray<SheetItem> items,
        double optimum
    )
    {
        SheetCutting cutting = GuillotineSheet.Best(
            length,
            width,
            items,
            0,
            GuillotineSheet.UsualEffort,
            TestContext.Current.CancellationToken
        );
        Assert.Empty(SheetLaws.Broken(length, width, items, 0, cutting));
        Assert.Equal(optimum, cutting.Value);
        Assert.True(cutting.Proved, $"bound {cutting.UpperBound}");
        Assert.Equal(optimum, cutting.UpperBound);
    }
}
