using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>Collects what is wrong with a job file.</summary>
/// <param name="whole">False where lines could not be read: then nothing is said to be missing or unknown, since the unread line may be why.</param>
internal sealed class JobFaults(List<Finding> findings, bool whole)
{
    public void Error(Place at, string message) => Add(Severity.Error, at, message);

    public void Warning(Place at, string message) => Add(Severity.Warning, at, message);

    /// <summary>A fault that an unread line would explain.</summary>
    public void ErrorIfWhole(Place at, string message)
    {
        if (whole)
        {
            Error(at, message);
        }
    }

    private void Add(Severity severity, Place at, string message) =>
        findings.Add(new(severity, at.ToString(), message));
}
