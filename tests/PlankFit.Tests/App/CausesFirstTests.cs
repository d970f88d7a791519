using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>A figure that was most likely read or written wrongly is told before all that may come of it.</summary>
public sealed class CausesFirstTests
{
    private static Finding First(string demo, string file, string right, string wrong)
    {
        using var temp = new TempFolder();
        string at = temp.File(demo);
        Directory.CreateDirectory(at);
        foreach (string of in new[] { demo, "tender" }.Distinct())
        {
            Directory.CreateDirectory(temp.File(of));
            foreach (string from in Directory.GetFiles(DemoTables.Folder(of)))
            {
                File.Copy(from, Path.Combine(temp.File(of), Path.GetFileName(from)));
            }
        }

        string changed = Path.Combine(at, file),
            text = File.ReadAllText(changed);
        Assert.Contains(right, text, StringComparison.Ordinal);
        File.WriteAllText(changed, text.Replace(right, wrong, StringComparison.Ordinal));
        var planned = PlannedJob.From(
            Path.Combine(at, "job.toml"),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        return FindingsText.GravestFirst(planned.Plan?.Findings ?? [.. planned.Faults!.Findings])[
            0
        ];
    }

    [Fact]
    public void AMisreadGirth()
    {
        Finding first = First(
            "tender-as-she-stands",
            "measured.csv",
            "girth,5,starboard,470",
            "girth,5,starboard,560"
        );
        Assert.Equal("girth, station 5, starboard", first.Where);
        Assert.Contains("measure again", first.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thickness = 65", "65 mm is an unlikely thickness for planks: is the unit right?")]
    [InlineData(
        "thickness = 1.2",
        "1.2 mm is an unlikely thickness for planks: is the unit right?"
    )]
    public void AnUnlikelyThickness(string wrong, string told)
    {
        Finding first = First("tender", "job.toml", "thickness = 4", wrong);
        Assert.Contains(told, first.Message, StringComparison.Ordinal);
    }
}
