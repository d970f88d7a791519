using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Words;

/// <summary>What is refused is told in the units of the job: who measures in feet and inches is not told of a master at 14630 mm.</summary>
public sealed class RefusalsInUnitsTests
{
    /// <summary>A job by chance in feet-inches-eighths, and one in inches.</summary>
    private static readonly int[] Seeds = [1, 2];

    [Theory]
    [InlineData("angle", "master = \"48 ft\"\nangle", "master")]
    [InlineData("width", "width = \"14 ft\"\n#", "wide")]
    [InlineData("width", "width = \"1/64 in\"\n#", "planks")]
    [InlineData("width", "width = \"30 in\"\n#", "width")]
    [InlineData("thickness", "thickness = \"9 in\"\n#", "thick")]
    [InlineData("thickness", "thickness = \"40 ft\"\n#", "thick")]
    [InlineData("heads", "gap = \"3 ft\"\nheads", "gap")]
    public void WhatIsRefusedIsToldInTheJobsUnits(string key, string instead, string word)
    {
        foreach (int seed in Seeds)
        {
            foreach (bool alone in new[] { false, true })
            {
                using var temp = new TempFolder();
                string path = ChanceJob.Write(seed, temp.File("job")),
                    text = File.ReadAllText(path)
                        .Replace($"\n{key} ", $"\n{instead} ", StringComparison.Ordinal);
                File.WriteAllText(
                    path,
                    alone
                        ? text.Replace(
                            "[output]\n",
                            "[output]\nlengths = \"inches\"\n",
                            StringComparison.Ordinal
                        )
                        : text
                );
                ReadResult read = JobReader.Read(path);
                Finding[] told =
                [
                    .. read.Findings,
                    .. read.Job is { } job
                        ? BottomPlanner.Plan(job, null, CancellationToken.None).Findings
                        : [],
                ];
                Assert.Contains(
                    told,
                    f => f.Message.Contains(word, StringComparison.OrdinalIgnoreCase)
                );
                Assert.Empty(
                    told.SelectMany(f =>
                        LengthsTold.Faults(
                            Own(f.Message),
                            alone ? LengthUnit.Inch : LengthUnit.Foot
                        )
                    )
                );
            }
        }
    }

    /// <summary>Without what the message quotes of the file, and without what it says is accepted there.</summary>
    private static string Own(string message)
    {
        int accepted = message.IndexOf("accepted:", StringComparison.Ordinal),
            quoted = message.IndexOf("\": ", StringComparison.Ordinal);
        string own = accepted < 0 ? message : message[..accepted];
        return quoted < 0 || quoted > own.Length ? own : own[(quoted + 2)..];
    }
}
