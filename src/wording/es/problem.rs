//! Problems of a field and of the browser's store, and what to do.

use crate::library::storage_layout::Trouble;
use crate::quantity::Problem;
use crate::wording::{Quantity, Voice};

pub(in crate::wording) fn problem(problem: &Problem, value: &str, voice: Voice) -> String {
    match problem {
        Problem::NotANumber => format!("«{value}» no es un número. Escriba cifras, con coma o punto."),
        Problem::OutOfRange { min, max, unit } => format!(
            "{value} está fuera de rango. Sirve de {} a {}.",
            voice.bare(Quantity::Plain, *min),
            // A count has no unit: no space after the number then.
            format!("{} {unit}", voice.bare(Quantity::Plain, *max)).trim_end()
        ),
        Problem::Empty => "Aquí falta algo. Escríbalo como está en la prenda.".into(),
        Problem::Unknown { nearest, accepted } => {
            let way_out = if !nearest.is_empty() {
                format!("¿Quiso decir {}?", nearest.join(", "))
            } else if !accepted.is_empty() {
                format!("Se conocen: {}.", accepted.join(", "))
            } else {
                "Escríbalo de otra manera.".into()
            };
            format!("«{value}» no se conoce. {way_out}")
        }
        Problem::SumNot100 { sum, section } if section.is_empty() => {
            format!("Las partes suman {}. Una etiqueta suma 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::SumNot100 { sum, section } => {
            format!(
                "Las partes de {section} suman {}. Una etiqueta suma 100.",
                voice.bare(Quantity::Plain, *sum)
            )
        }
        Problem::TooLong { max } => format!("Demasiado largo. Caben {max} letras."),
        Problem::Contradiction { with } => {
            format!("«{value}» y {with} no pueden ser ciertos a la vez. Cambie uno.")
        }
        Problem::NotUnderstood => format!(
            "«{value}» no se pudo leer. Escriba una parte y una fibra, como 60% algodón 40% poliéster."
        ),
        Problem::NotSolved => "No se pudo calcular el calor en el horno para esto. Cambie el ajuste, la película o el peso de la tela.".into(),
    }
}

/// What is wrong with the browser's store, and what to do.
pub(in crate::wording) fn trouble(trouble: &Trouble) -> String {
    use Trouble as T;
    match trouble {
        T::Full => "El disco está lleno, o el navegador no le da más a esta página. Lo que cambie ahora no se guarda: libere espacio, o guárdelo como archivo.".into(),
        T::Refused => "Este navegador no guarda nada de esta página. Ocurre en ventanas privadas o por una norma del taller: guarde su trabajo como archivo antes de cerrarla.".into(),
        T::Wiped => "El navegador ha borrado lo que estaba guardado aquí. Abra el último archivo que guardó; desde ahora vuelve a guardar.".into(),
        T::Blocked => "Otra pestaña tiene ocupado el almacén con una versión anterior de esta página. Ciérrela y esta seguirá.".into(),
        T::Newer => "Aquí se usó una versión más nueva de esta página. Esta lee lo guardado y no cambia nada: abra la nueva, o guarde su trabajo como archivo.".into(),
        T::Closed => "El almacén se cerró mientras la página estaba abierta. Guarde su trabajo como archivo y cargue la página otra vez.".into(),
        T::NotOurs => "Ese archivo no contiene ningún pedido. No se cambió nada: abra un archivo guardado aquí.".into(),
        T::Failed(said) => format!("El navegador no pudo guardar. Dice «{said}»: guarde su trabajo como archivo."),
    }
}
