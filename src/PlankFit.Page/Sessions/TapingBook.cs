using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using PlankFit.App.Noting;
using PlankFit.App.Showing;
using PlankFit.Draughting.Files;
using PlankFit.Export.Checks;
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
                return Put(laid.Plan, seen.History.Present.Text);
            }
            catch (OutputException e)
            {
                return new(false, [e.Message]);
            }
        }
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
        (byte[] bytes, string text) = There(name);
        HashSet<string> there = [.. MeasuredWriting.Marks(text)];
        var read = TapedReadings.Of(plan, Sheet(plan), Readings, there);
        string with = MeasuredWriting.With(
            text,
            read.Rows,
            mark => replaced.TryGetValue(mark, out bool gone) && gone
        );
        int after = MeasuredWriting.Marks(with).Count();
        bool changed = with != text && (after > 0 || bytes.Length > 0);
        if (changed)
        {
            DurableFile.Write(LinkedFile.Real(PathOf(name)), JobSaving.Bytes(with, bytes));
        }

        string told = string.Create(
            CultureInfo.InvariantCulture,
            $"{name} has {after} {(after == 1 ? "reading" : "readings")} of this page, {there.Count} before."
        );
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
        return file.Text is { } text
            ? (file.Bytes, text)
            : throw new OutputException($"{name} {file.Fault!.Message}", path);
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
