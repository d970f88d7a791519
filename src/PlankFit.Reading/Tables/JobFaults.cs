using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Tables;

/// <summary>Collects what is wrong with a job file.</summary>
/// <param name="whole">False where lines could not be read: then nothing is said to be missing, since an unread line may have it.</param>
/// <param name="headsWhole">False where a table's head could not be read: then no key is said to be unknown, since it may belong to that table.</param>
/// <param name="asked">Takes the keys that are asked for, each with the tables that it lies in: "layer.lap.width".</param>
internal sealed class JobFaults(
    List<Finding> findings,
    bool whole,
    bool headsWhole,
    ISet<string> asked
)
{
    private readonly List<Place> errors = [];

    /// <summary>In which units messages give lengths.</summary>
    public LengthUnit Shown { get; set; } = LengthUnit.Millimetre;

    /// <summary>Where errors are.</summary>
    public IReadOnlyList<Place> Errors => errors;

    public void Ask(string key) => asked.Add(key);

    public void Error(Place at, string message)
    {
        findings.Add(new(Severity.Error, at.ToString(), message));
        errors.Add(at);
    }

    /// <param name="isCause">What else is found may come of it.</param>
    public void Warning(Place at, string message, bool isCause) =>
        findings.Add(new(Severity.Warning, at.ToString(), message) { IsCause = isCause });

    /// <summary>A text is no name; where lines could not be read it may only have swallowed them, and that is said.</summary>
    public void NoName(Place at, string message)
    {
        if (whole)
        {
            Error(at, message);
        }
    }

    /// <summary>Something is not there.</summary>
    public void Missing(Place at, string message)
    {
        if (whole)
        {
            Error(at, message);
        }
    }

    /// <summary>Something is there that nobody knows.</summary>
    public void Unknown(Place at, string message)
    {
        if (headsWhole)
        {
            Error(at, message);
        }
    }
}
