namespace PlankFit.Draughting.Files;

/// <summary>What is to become of one file of a folder when a run's files are moved in.</summary>
/// <param name="Name">From the folder, with forward slashes.</param>
/// <param name="Before">What is there before; null where nothing is.</param>
/// <param name="After">What is to be there; null where the file goes.</param>
internal sealed record FileMove(string Name, FileMark? Before, FileMark? After);
