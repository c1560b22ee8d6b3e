use std::time::Instant;
fn main(){
 let b0=trammel_persistence::read(trammel_persistence::demos()[0].text).unwrap();
 for dx in 0..15 { let mut b=b0.clone(); b.front.lower_arm.ball_joint[1]-=dx as f64; 
  let t=Instant::now(); let s=match trammel_analysis::Study::of(&b){Ok(s)=>s,Err(e)=>{println!("{dx} {e}");continue}}; let t1=t.elapsed(); let t=Instant::now(); let c=trammel_analysis::cautions(&b,&s); println!("{dx} study {:?} cautions {:?} n={} {:?}",t1,t.elapsed(),c.len(), c.first().map(|c|c.headline.clone())); }
}
