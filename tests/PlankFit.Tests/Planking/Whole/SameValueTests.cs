using System.Text.RegularExpressions;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>A job is equal to itself read again, and to nothing in which a number, a name or a line is otherwise.</summary>
public sealed partial class SameValueTests
{
    [Theory]
    [InlineData("tender")]
    [InlineData("tender-as-she-stands")]
    [InlineData("pilot-skiff")]
    [InlineData("survey-launch")]
    [InlineData("survey-launch-from-the-rack")]
    public void AJobReadTwiceIsTheSame(string hull)
    {
        Job one = Read(Path.Combine(DemoTables.Folder(hull), "job.toml"))!,
            other = Read(Path.Combine(DemoTables.Folder(hull), "job.toml"))!;
        Assert.NotSame(one, other);
        Assert.True(SameValue.Are(one, other));
    }

    /// <summary>Every number of the launch's job, one after the other a little greater: each makes it another job.</summary>
    [Fact]
    public void AJobWithAnotherNumberIsAnother()
    {
        using var temp = new TempFolder();
        string from = DemoTables.Folder("survey-launch");
        File.Copy(Path.Combine(from, "offsets.csv"), temp.File("offsets.csv"));
        string text = File.ReadAllText(Path.Combine(from, "job.toml"));
        Job was = Read(Path.Combine(from, "job.toml"))!;
        int others = 0;
        foreach (Match number in Numbers().Matches(Comments().Replace(text, Blank)))
        {
            string changed =
                text[..number.Index]
                + Greater(number.Value)
                + text[(number.Index + number.Length)..];
            File.WriteAllText(temp.File("job.toml"), changed);
            if (Read(temp.File("job.toml")) is { } job)
            {
                others++;
                Assert.False(SameValue.Are(was, job), $"'{number.Value}' at {number.Index}");
            }
        }

        Assert.True(others > 80, $"{others} numbers");
    }

    [Fact]
    public void AJobWithAnotherOffsetIsAnother()
    {
        using var temp = new TempFolder();
        string from = DemoTables.Folder("survey-launch");
        File.Copy(Path.Combine(from, "job.toml"), temp.File("job.toml"));
        string text = File.ReadAllText(Path.Combine(from, "offsets.csv"));
        Job was = Read(Path.Combine(from, "job.toml"))!;
        MatchCollection numbers = Cells().Matches(text);
        int others = 0;
        for (int i = 0; i < numbers.Count; i += 7)
        {
            Match cell = numbers[i];
            File.WriteAllText(
                temp.File("offsets.csv"),
                text[..cell.Index] + Greater(cell.Value) + text[(cell.Index + cell.Length)..]
            );
            if (Read(temp.File("job.toml")) is { } job)
            {
                others++;
                Assert.False(SameValue.Are(was, job), $"'{cell.Value}' at {cell.Index}");
            }
        }

        Assert.True(others > 10, $"{others} cells");
    }

    /// <summary>Lists in order, tables by key, nothing by reference; a value that is missing is not one that is there.</summary>
    [Fact]
    public void ListsAndTablesAreTheSameByWhatTheyHold()
    {
        Assert.True(
            SameValue.Are(
                new HullSpec("k", "c", ["a"], default, default),
                new HullSpec("k", "c", ["a"], default, default)
            )
        );
        Assert.False(
            SameValue.Are(
                new HullSpec("k", "c", ["a", "b"], default, default),
                new HullSpec("k", "c", ["b", "a"], default, default)
            )
        );
        FasteningSpec one = new(FasteningSettings.None, [], null, [], 10);
        Assert.True(
            SameValue.Are(
                one with
                {
                    Depths = one.Depths.Add("a", 1).Add("b", 2),
                },
                one with
                {
                    Depths = one.Depths.Add("b", 2).Add("a", 1),
                }
            )
        );
        Assert.False(
            SameValue.Are(
                one with
                {
                    Depths = one.Depths.Add("a", 1),
                },
                one with
                {
                    Depths = one.Depths.Add("a", 2),
                }
            )
        );
        Assert.False(
            SameValue.Are(
                one with
                {
                    Depths = one.Depths.Add("a", 1),
                },
                one with
                {
                    Depths = one.Depths.Add("b", 1),
                }
            )
        );
        Assert.False(SameValue.Are(one, one with { BackingDepthMm = 0 }));
    }

    /// <summary>Without its revision, which changes with every byte.</summary>
    private static Job? Read(string path) =>
        JobReader.Read(path).Job is { } job ? job with { Revision = "" } : null;

    private static string Greater(string number) =>
        number.Contains('.', StringComparison.Ordinal) ? number + "1" : number + ".01";

    private static string Blank(Match comment) => new(' ', comment.Length);

    [GeneratedRegex("#.*")]
    private static partial Regex Comments();

    [GeneratedRegex(@"(?<=[=\[,] *)\d+(\.\d+)?(?=\s|,|\]|$)", RegexOptions.Multiline)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"(?<=,)\d+(\.\d+)?(?=,|$|\r)", RegexOptions.Multiline)]
    private static partial Regex Cells();
}
