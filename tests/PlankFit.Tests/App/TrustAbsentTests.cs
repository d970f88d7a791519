using PlankFit.Tests.Disk;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>What is not asked how sure it is says nothing of it; and what is asked is no other plank for it.</summary>
public sealed class TrustAbsentTests
{
    /// <summary>Files of words in which [trust] has its say.</summary>
    private static readonly string[] Said =
    [
        "files.txt",
        "planking.json",
        "summary.txt",
        "tables/findings.csv",
    ];

    /// <summary>Of which there are some only with [trust].</summary>
    private static readonly string[] OfItsOwn =
    [
        "tables/how-sure.csv",
        "tables/how-sure-keel.csv",
        "to-tape.csv",
    ];

    [Fact]
    public void NoDrawingAndNoTableOfPlanksChangesByIt()
    {
        using var temp = new TempFolder();
        string without = SmallJob.In(temp.File("without"), 400),
            with = SmallJob.In(temp.File("with"), 400);
        File.AppendAllText(with, "\n[trust]\n");
        string plain = temp.File("plain"),
            trusted = temp.File("trusted");
        SmallJob.Run("lay", without, plain);
        SmallJob.Run("lay", with, trusted);
        Dictionary<string, string[]> one = Lines(plain),
            other = Lines(trusted);
        Assert.Empty(one.Keys.Intersect(OfItsOwn));
        Assert.Equal(one.Keys.Order(), other.Keys.Except(OfItsOwn).Order());
        Assert.True(one.Keys.Count(f => f.StartsWith("dxf/", StringComparison.Ordinal)) > 5);
        foreach (string file in one.Keys.Except(Said))
        {
            Assert.True(one[file].SequenceEqual(other[file]), file);
        }

        Assert.DoesNotContain(
            one.Values.SelectMany(l => l),
            l =>
                l.Contains("19 times in 20", StringComparison.Ordinal)
                || l.Contains('±', StringComparison.Ordinal)
        );
        Assert.Contains(
            other.Values.SelectMany(l => l),
            l => l.Contains("19 times in 20", StringComparison.Ordinal)
        );
    }

    /// <summary>All files that are text, without the lines that name the revision of the inputs, and without where in a DXF these are set: that goes by their width.</summary>
    private static Dictionary<string, string[]> Lines(string folder)
    {
        string revision = File.ReadAllLines(Path.Combine(folder, "tables/about.csv"))
            .Single(l => l.StartsWith("revision of the inputs,", StringComparison.Ordinal))
            .Split(',')[1];
        const int entity = 10;
        return Directory
            .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".csv" or ".dxf" or ".svg" or ".txt" or ".json")
            .ToDictionary(
                f => Path.GetRelativePath(folder, f).Replace('\\', '/'),
                f =>
                {
                    string[] lines = File.ReadAllLines(f);
                    int before = Path.GetExtension(f) == ".dxf" ? entity : 0;
                    return lines
                        .Where(
                            (_, i) =>
                                !lines[i..Math.Min(lines.Length, i + before + 1)]
                                    .Any(l => l.Contains(revision, StringComparison.Ordinal))
                        )
                        .ToArray();
                }
            );
    }
}
