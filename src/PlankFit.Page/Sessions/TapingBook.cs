using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using PlankFit.App.Noting;
using PlankFit.App.Showing;
using PlankFit.Draughting.Files;
using PlankFit.Export.Checks;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <param name="Words">What was done, or why not.</param>
internal sealed record PutAnswer(bool Done, ImmutableArray<string> Words);

/// <summary>
/// What was read in the blanks of the check sheet: noted in the journal as it is typed, and, where that is asked for, put into the file of what was measured, by which the hull is
/// adjusted here and on the command line.
/// </summary>
internal sealed class TapingBook(JobSession session, Notebook notes)
{
    /// <summary>So many files of that name nobody keeps.</summary>
    private const int MostFiles = 1000;

    /// <summary>Blanks of plans that are still looked at; they go with their plans.</summary>
    private static readonly ConditionalWeakTable<BottomPlan, Made> Sheets = [];

    private readonly Lock one = new();

    public static ImmutableArray<BlankGroup> Sheet(BottomPlan plan) =>
        Sheets.GetValue(plan, p => new(new(() => ShownBlanks.Of(p)))).Groups.Value;

    /// <summary>Readings that hold, by the journal.</summary>
    public ImmutableArray<ProgressTick> Readings =>
        [.. notes.Now.Notes.Where(n => n.Blank is not null)];

    /// <summary>Marks of the readings that stand in the file of what was measured; empty where there is none.</summary>
    public HashSet<string> InTheFile =>
        MeasuredNamed.Of(session.Now.History.Present.Text) is { } name
        && session.MayRead(name)
        && TextFile.Read(PathOf(name), name).Text is { } text
            ? [.. MeasuredWriting.Marks(text)]
            : [];

    /// <param name="there">Marks of readings that stand in the file.</param>
    /// <returns>How many of them were taken back, or read anew, since.</returns>
    public int Gone(IReadOnlySet<string> there)
    {
        try
        {
            return notes.Replaced.Count(r => r.Value && there.Contains(r.Key));
        }
        catch (OutputException)
        {
            // Another program has the journal: that is told beside the notes.
            return 0;
        }
    }

    /// <summary>Puts what was read into the file, once: what is there already is not put there again, and what was read anew stands in its own place.</summary>
    public PutAnswer Put()
    {
        lock (one)
        {
            Seen seen = session.Now;
            if (seen.Good is not { } laid)
            {
                return new(false, ["No planks are laid yet: mend the job first."]);
            }

            bool isLaid = laid.Turn == seen.Turn;
            if (!isLaid && seen.Tried != seen.Turn)
            {
                return new(false, ["The planks are being laid: again in a moment."]);
            }

            if (laid.Plan.Job.Trust is null)
            {
                return new(
                    false,
                    [
                        "The hull is adjusted to readings only where the job has [trust], which says how far table and tape are trusted (plankfit help trust).",
                    ]
                );
            }

            try
            {
                return isLaid
                    ? Put(laid.Plan, seen.History.Present.Text)
                    : TakeOut(seen.History.Present.Text, seen.Faults);
            }
            catch (OutputException e)
            {
                return new(false, [e.Message]);
            }
        }
    }

    /// <summary>What is refused may be refused for a reading that was put there, and was taken back since: that goes, and nothing is put there by planks of another text.</summary>
    /// <param name="faults">Of the text, of which no planks could be laid.</param>
    private PutAnswer TakeOut(string job, ImmutableArray<Finding> faults)
    {
        if (
            MeasuredNamed.Of(job) is { } name
            && JobFolder.Holds(session.Path, name)
            && Gone(InTheFile) > 0
        )
        {
            (_, _, string told) = Written(name, [], notes.Replaced);
            session.LayAgain();
            return new(true, [told]);
        }

        Finding? first = FindingsText
            .GravestFirst(faults)
            .FirstOrDefault(f => f.Severity == Severity.Error);
        return new(
            false,
            [
                "No planks are laid by the job as it is now: mend it first.",
                .. first is null ? [] : new[] { FindingsText.Words(first) },
            ]
        );
    }

    private PutAnswer Put(BottomPlan plan, string job)
    {
        IReadOnlyDictionary<string, bool> replaced = notes.Replaced;
        string? named = MeasuredNamed.Of(job);
        if (named is not null && !JobFolder.Holds(session.Path, named))
        {
            return new(
                false,
                [$"{named} does not lie in the job's folder: put its rows there with an editor."]
            );
        }

        string name = named ?? FreeName(replaced);
        var read = TapedReadings.Of(
            plan,
            Sheet(plan),
            Readings,
            MeasuredWriting.Marks(There(name).Text).ToHashSet()
        );
        (bool changed, int after, string told) = Written(name, read.Rows, replaced);
        if (named is not null || after == 0)
        {
            if (changed)
            {
                session.LayAgain();
            }

            return new(true, [changed ? told : "Nothing is to be put there.", .. read.Told]);
        }

        return
            session.Rewrite(text => MeasuredNamed.With(text, name), $"what was measured in {name}")
                is null
            ? new(
                false,
                [told, $"The job does not name it: write measured = \"{name}\" under [as-built]."]
            )
            : new(true, [told, "The job names it now: save the job.", .. read.Told]);
    }

    /// <summary>Writes the rows into the file, and takes out those that hold no more.</summary>
    /// <returns>Whether that changed it, how many of this page stand there then, and that in words.</returns>
    private (bool Changed, int After, string Told) Written(
        string name,
        ImmutableArray<MeasuredEntry> rows,
        IReadOnlyDictionary<string, bool> replaced
    )
    {
        (byte[] bytes, string text) = There(name);
        string with = MeasuredWriting.With(
            text,
            rows,
            mark => replaced.TryGetValue(mark, out bool gone) && gone
        );
        int before = MeasuredWriting.Marks(text).Count(),
            after = MeasuredWriting.Marks(with).Count();
        bool changed = with != text && (after > 0 || bytes.Length > 0);
        if (changed)
        {
            DurableFile.Write(LinkedFile.Real(PathOf(name)), JobSaving.Bytes(with, bytes));
        }

        return (
            changed,
            after,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{name} has {after} {(after == 1 ? "reading" : "readings")} of this page, {(before == 0 ? "none" : $"{before}")} before."
            )
        );
    }

    private string PathOf(string name) =>
        Path.GetFullPath(name, Path.GetDirectoryName(Path.GetFullPath(session.Path))!);

    /// <exception cref="OutputException">What stands there is no such file.</exception>
    private (byte[] Bytes, string Text) There(string name)
    {
        string path = PathOf(name);
        if (!Path.Exists(path))
        {
            return ([], MeasuredWriting.Empty);
        }

        var file = TextFile.Read(path, name);
        string text = file.Text ?? throw new OutputException($"{name} {file.Fault!.Message}", path);
        return MeasuredText.IsOne(text)
            ? (file.Bytes, text)
            : throw new OutputException(
                $"{name} does not begin with the line what,where,side,value: it is no file of what was measured, and nothing is written there. Name another under [as-built].",
                path
            );
    }

    /// <summary>A file that no job names may be another's: only one that has nothing but readings of this journal is gone on with.</summary>
    private string FreeName(IReadOnlyDictionary<string, bool> known)
    {
        string of = Path.GetFileNameWithoutExtension(MeasuredNamed.UsualName),
            end = Path.GetExtension(MeasuredNamed.UsualName);
        for (int i = 1; i <= MostFiles; i++)
        {
            string name = i == 1
                    ? of + end
                    : string.Create(CultureInfo.InvariantCulture, $"{of}-{i}{end}"),
                path = PathOf(name);
            var there = new FileInfo(path);
            if (
                there.LinkTarget is null
                && (
                    !Path.Exists(path)
                    || (
                        TextFile.Read(path, name).Text is { } text
                        && MeasuredWriting.IsAllOf(text, known.ContainsKey)
                    )
                )
            )
            {
                return name;
            }
        }

        throw new OutputException(
            $"There are {MostFiles} files of that name already: take some away.",
            session.Path
        );
    }

    private sealed record Made(Lazy<ImmutableArray<BlankGroup>> Groups);
}
