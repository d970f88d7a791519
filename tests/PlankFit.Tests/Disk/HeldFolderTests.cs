using System.Collections.Concurrent;
using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>One run at a time writes into a folder; the second is told who does.</summary>
public sealed class HeldFolderTests
{
    [Fact]
    public void TheSecondRunIsToldWhoIsWriting()
    {
        using var temp = new TempFolder();
        using OutputFolder first = Begin(temp.Path, "nest");
        OutputException refused = Assert.Throws<OutputException>(() => Begin(temp.Path, "lay"));
        Assert.Contains(
            $"another run is writing there (plankfit nest, process {Environment.ProcessId} of ",
            refused.Message,
            StringComparison.Ordinal
        );
        Assert.Null(UnfinishedMove.Mend(temp.Path));
        first.Write("a", "x"u8.ToArray());
        first.Commit();
    }

    /// <summary>Many runs at once, coming and going: no two hold the folder together, none sees half of another's files, and nothing is left.</summary>
    [Fact]
    public void RunsThatComeAndGoAtOnceNeverMeet()
    {
        using var temp = new TempFolder();
        string folder = temp.File("out");
        int inside = 0,
            together = 0,
            done = 0;
        var unexpected = new ConcurrentBag<Exception>();
        Parallel.For(
            0,
            300,
            new ParallelOptions { MaxDegreeOfParallelism = 6 },
            i =>
            {
                try
                {
                    using OutputFolder run = Begin(folder, i % 2 == 0 ? "lay" : "keel");
                    if (Interlocked.Increment(ref inside) > 1)
                    {
                        Interlocked.Increment(ref together);
                    }

                    for (int k = 0; k < 3; k++)
                    {
                        run.Write($"f{k}", BitConverter.GetBytes(i));
                    }

                    run.Commit();
                    Interlocked.Increment(ref done);
                    Interlocked.Decrement(ref inside);
                }
                catch (OutputException e)
                    when (e.Message.Contains("another run", StringComparison.Ordinal)) { }
                catch (Exception e)
                {
                    unexpected.Add(e);
                }
            }
        );
        Assert.Empty(unexpected);
        Assert.Equal(0, together);
        Assert.True(done > 0);
        Assert.Equal(
            ["f0", "f1", "f2", "files.txt"],
            FolderState.Of(folder).Select(l => l.Split(' ')[0])
        );
        Assert.Single(
            Enumerable
                .Range(0, 3)
                .Select(k => File.ReadAllText(Path.Combine(folder, $"f{k}")))
                .Distinct()
        );
    }

    private static OutputFolder Begin(string folder, string command) =>
        OutputFolder.Begin(folder, command, TestContext.Current.CancellationToken);
}
