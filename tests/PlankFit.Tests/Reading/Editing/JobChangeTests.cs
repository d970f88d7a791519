using CsCheck;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Editing;

/// <summary>A value of a job file is changed in its place, and all else stays as it stands.</summary>
public sealed class JobChangeTests
{
    private static readonly string Launch = File.ReadAllText(
        Path.Combine(DemoTables.Demo("survey-launch"), "job.toml")
    );

    /// <summary>The comment after the value, its spacing, the comments above and the next table's heading stay.</summary>
    [Fact]
    public void OnlyTheValueChanges()
    {
        Assert.Equal(
            Launch.Replace("angle-drift = 9   ", "angle-drift = 12   ", StringComparison.Ordinal),
            JobChange.Of(Launch, "layer[0].angle-drift", "12")
        );
        Assert.Equal(
            Launch.Replace(
                "station = \"4\", degrees = 18",
                "station = \"4\", degrees = 17.5",
                StringComparison.Ordinal
            ),
            JobChange.Of(Launch, "setting-up.topside.flare[1].degrees", "17.5")
        );
    }

    /// <summary>What the table leaves out is written after the last line that it has, before the next table's comment.</summary>
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void WhatIsLeftOutIsAddedToItsTable(string newLine)
    {
        string text = Launch.ReplaceLineEndings(newLine),
            last = $"by = 25 }}{newLine}";
        Assert.Equal(
            text.Replace(
                $"heads = \"aft\"{newLine}angle = 45{newLine}hold  = \"width\"{newLine}",
                $"heads = \"aft\"{newLine}angle = 45{newLine}hold  = \"width\"{newLine}master = 4100{newLine}",
                StringComparison.Ordinal
            ),
            JobChange.Of(text, "layer[2].master", "4100")
        );
        Assert.Contains(last, text, StringComparison.Ordinal);
    }

    /// <summary>Eighths and signs beyond the first plane count as the parser counts them: the value after them is found.</summary>
    [Fact]
    public void PlacesAreRightBehindOddSigns()
    {
        const string odd = "[job]\nname = \"⅜ \U0001D49C\" # 𝒜 ⅝\nunits = \"mm\"  # after\n";
        Assert.Equal(
            odd.Replace("\"mm\"", "\"in\"", StringComparison.Ordinal),
            JobChange.Of(odd, "job.units", "in")
        );
    }

    /// <summary>Whatever is typed stays within its value: it reads back as it was typed, and no line, key or table comes with it.</summary>
    [Fact]
    public void WhateverIsTypedIsOneValue() =>
        Gen.String.Sample(
            typed =>
            {
                string changed = JobChange.Of(Launch, "job.name", typed)!;
                JobField[] were = [.. JobFields.Of(Launch)],
                    are = [.. JobFields.Of(changed)];
                Assert.Equal(were.Select(f => f.Address), are.Select(f => f.Address));
                Assert.Equal(typed.Trim(), are.Single(f => f.Address == "job.name").Written);
                Assert.Equal(
                    were.Where(f => f.Address != "job.name").Select(f => f.Written),
                    are.Where(f => f.Address != "job.name").Select(f => f.Written)
                );
            },
            iter: LongRuns.Of(40, 2000)
        );

    [Theory]
    [InlineData("\"\nwidth = 9")]
    [InlineData("[1]\n[nest]")]
    [InlineData("[1] # ]")]
    [InlineData("[1, {a = 2}]\nb = 3")]
    [InlineData("[")]
    public void AListIsOneListOrNothing(string typed)
    {
        string? changed = JobChange.Of(Launch, "fastenings.lengths", typed);
        Assert.True(
            changed is null
                || JobFields.Of(changed).Count(f => f.Written is not null)
                    == JobFields.Of(Launch).Count(f => f.Written is not null),
            changed
        );
    }

    [Fact]
    public void WhatIsNotThereIsNotChanged()
    {
        Assert.Null(JobChange.Of(Launch, "layer[9].width", "100"));
        Assert.Null(JobChange.Of("[layer", "layer[0].width", "100"));
    }

    /// <summary>Every value of every demo that a key describes is found, with the line that it stands on.</summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    [InlineData("day-launch")]
    public void EveryValueIsFoundAtItsLine(string hull)
    {
        string[] lines = File.ReadAllLines(Path.Combine(DemoTables.Demo(hull), "job.toml"));
        JobField[] fields = [.. JobFields.Of(string.Join('\n', lines) + "\n")];
        JobField[] written = [.. fields.Where(f => f.Written is not null)];
        Assert.True(written.Length > 15);
        Assert.All(
            written.Where(f => f.Key is not ListKey),
            f =>
            {
                Assert.Contains(f.Key.Name, lines[f.Line - 1], StringComparison.Ordinal);
                Assert.Contains(f.Written!, lines[f.Line - 1], StringComparison.Ordinal);
            }
        );
        Assert.Equal(
            lines.Count(l => l.TrimStart().StartsWith("width", StringComparison.Ordinal)),
            written.Count(f =>
                f.Key.Name == "width"
                && lines[f.Line - 1].TrimStart().StartsWith("width", StringComparison.Ordinal)
            )
        );
    }

    /// <summary>The same text through the door for texts gives the same job as from the disk, revision and all; a changed one is another revision.</summary>
    [Fact]
    public void ATextInHandIsReadAsTheFileIs()
    {
        string path = Path.Combine(DemoTables.Demo("survey-launch"), "job.toml");
        ReadResult disk = JobReader.Read(path);
        byte[] bytes = File.ReadAllBytes(path);
        ReadResult hand = JobReader.Read(path, TextFile.Decode(bytes, "job.toml"));
        Assert.Equal(disk.Job!.Revision, hand.Job!.Revision);
        ReadResult marked = JobReader.Read(
            path,
            TextFile.Decode(
                System.Text.Encoding.UTF8.GetBytes(JobChange.Of(Launch, "layer[0].width", "120")!),
                "job.toml"
            )
        );
        Assert.NotEqual(disk.Job.Revision, marked.Job!.Revision);
        Assert.Equal(
            120,
            marked.Job.Layers.OfType<PlankFit.Planking.Layers.PlankLayerSpec>().First().WidthMm
        );
        ReadResult bad = JobReader.Read(
            path,
            TextFile.Decode(
                System.Text.Encoding.UTF8.GetBytes(JobChange.Of(Launch, "layer[0].width", "0")!),
                "job.toml"
            )
        );
        Assert.Null(bad.Job);
        Assert.Contains(
            bad.Findings,
            f => f.Where.StartsWith("job.toml, line 15", StringComparison.Ordinal)
        );
    }
}
