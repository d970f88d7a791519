using System.Globalization;
using PlankFit.App.Looking;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Looking;

/// <summary>A table is judged again where it, or anything that its judgement hangs on, is another; else the judgement there is holds.</summary>
public sealed class FairnessLookTests
{
    [Fact]
    public void OnlyAnotherTableIsJudgedAgain()
    {
        using var folder = new TempFolder();
        string job = OneLayerTender.In(folder, ""),
            table = folder.File("offsets.csv"),
            text = File.ReadAllText(table);
        FairnessLook Look(FairnessLook? before)
        {
            ReadResult read = JobReader.Read(job);
            var of = LookedAt.Of(read.Job!, read.OffsetsText!, "offsets.csv");
            return FairnessLook.Again(before, of, read.Job!);
        }

        FairnessLook first = Look(null);
        File.WriteAllText(
            job,
            File.ReadAllText(job).Replace("width = 100", "width = 90", StringComparison.Ordinal)
        );
        Assert.Same(first, Look(first));
        // A line more above moves every place that is named.
        File.WriteAllText(table, "# a comment\n" + text);
        FairnessLook moved = Look(first);
        Assert.NotSame(first, moved);
        // A misread half-breadth is found at once, and gone when it is mended.
        string[] lines = text.Split('\n');
        int row = Array.FindIndex(
            lines,
            l => l.StartsWith("chine,half-breadth", StringComparison.Ordinal)
        );
        string[] cells = lines[row].Split(',');
        cells[6] = (decimal.Parse(cells[6], CultureInfo.InvariantCulture) + 60).ToString(
            CultureInfo.InvariantCulture
        );
        lines[row] = string.Join(',', cells);
        File.WriteAllText(table, string.Join('\n', lines));
        FairnessLook slipped = Look(first);
        Assert.True(slipped.Findings.Length > first.Findings.Length);
        File.WriteAllText(table, text);
        Assert.Equal(first.Findings.Length, Look(slipped).Findings.Length);
    }
}
