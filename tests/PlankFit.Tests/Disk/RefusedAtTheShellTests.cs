using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>What the shell sees of a folder that must not be written: exit 3, the file's name, what to do, and nothing changed.</summary>
public sealed class RefusedAtTheShellTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string job;

    public RefusedAtTheShellTests() => job = SmallJob.In(temp.File("job"), 400);

    public void Dispose() => temp.Dispose();

    [Fact]
    public void AFileOfTheUsersOwnIsNamed()
    {
        Directory.CreateDirectory(temp.File("out/tables"));
        File.WriteAllText(temp.File("out/tables/keel.csv"), "mine");
        Refused($"Cannot write {temp.File("out/tables/keel.csv")}: a file of that name is there");
    }

    [Fact]
    public void TheRunThatHoldsTheFolderIsNamed()
    {
        string who = $"plankfit nest, process {Environment.ProcessId} of ";
        using var other = OutputFolder.Begin(
            temp.File("out"),
            "nest",
            TestContext.Current.CancellationToken
        );
        (int code, _, string errors) = BuiltProgram.Run(["keel", job, "--out", temp.File("out")]);
        Assert.Equal(3, code);
        Assert.Contains(who, errors, StringComparison.Ordinal);
        other.Write("a", "x"u8.ToArray());
        other.Commit();
    }

    [Fact]
    public void AFairedCopyThatWasWorkedOnIsKeptAndNoFileOfCheckChanges()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        string copy = temp.File("job/offsets.faired.csv");
        Assert.Equal(0, Check("1 mm").Code);
        string first = File.ReadAllText(copy);
        Assert.Equal(0, Check("2 mm").Code);
        Assert.NotEqual(first, File.ReadAllText(copy));

        File.AppendAllText(copy, "# looks well\n");
        string[] before = FolderState.Of(temp.Path);
        (int code, string errors) = Check("1 mm");
        Assert.Equal(3, code);
        Assert.Contains($"Cannot write {copy}: it was changed", errors, StringComparison.Ordinal);
        Assert.Equal(before, FolderState.Of(temp.Path));

        File.Delete(copy);
        Assert.Equal(0, Check("1 mm").Code);
        Assert.Equal(first, File.ReadAllText(copy));
    }

    private (int Code, string Errors) Check(string tolerance)
    {
        (int code, _, string errors) = BuiltProgram.Run([
            "check",
            job,
            "--fair",
            tolerance,
            "--out",
            temp.File("out"),
        ]);
        return (code, errors);
    }

    private void Refused(string says)
    {
        string[] before = FolderState.Of(temp.Path);
        (int code, _, string errors) = BuiltProgram.Run(["keel", job, "--out", temp.File("out")]);
        Assert.Equal(3, code);
        Assert.Contains(says, errors, StringComparison.Ordinal);
        Assert.Contains("choose another folder", errors, StringComparison.Ordinal);
        Assert.Equal(before, FolderState.Of(temp.Path));
    }
}
